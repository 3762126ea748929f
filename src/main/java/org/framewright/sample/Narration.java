package org.framewright.sample;

/** Takes the story of the sample job as it goes on. */
public interface Narration {
  /** Nobody listens. */
  Narration SILENT =
      new Narration() {
        @Override
        public void heading(String text) {}

        @Override
        public void line(String text) {}
      };

  /** A new step begins. */
  void heading(String text);

  /** A line of it, for a photographer to read. */
  void line(String text);
}
