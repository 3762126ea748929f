package org.framewright.frames;

/**
 * What placed a frame in its setup; of several that do, the first counts, but a slate and what a
 * person put on set go by which was later, see {@link Attribution}.
 */
public enum PlacedBy {
  /** A person moved it there. */
  PERSON("a person moved it"),
  /** Its name says so, by the convention. */
  NAME("its name says so"),
  /** A slate of its body was shot before it. */
  SLATE("by slate"),
  /** The setup was on set when the frame arrived. */
  ARRIVAL("it was on set when the frame arrived"),
  /** The setup was on set when the frame was taken, by its body's clock put right. */
  CAPTURE("it was on set when the frame was taken");

  private final String words;

  PlacedBy(String words) {
    this.words = words;
  }

  /** How it came to its setup, in words that fit after the setup. */
  public String words() {
    return words;
  }
}
