package org.framewright.sample;

/** Hears the story of the sample job as it goes on. */
public interface Teller {
  /** Nobody listens. */
  Teller NOBODY =
      new Teller() {
        @Override
        public void step(String heading) {}

        @Override
        public void tell(String line) {}
      };

  /** A new step begins. */
  void step(String heading);

  /** A line of it, for a photographer to read; at most 100 characters. */
  void tell(String line);
}
