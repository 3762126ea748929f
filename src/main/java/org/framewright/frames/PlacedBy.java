package org.framewright.frames;

import org.framewright.base.Text;

/**
 * What placed a frame in its setup; of several that do, the first counts, but a slate and what a
 * person put on set go by which was later, see {@link Attribution}.
 */
public enum PlacedBy {
  /** A person moved it there. */
  PERSON,
  /** Its name says so, by the convention. */
  NAME,
  /** A slate of its body was shot before it. */
  SLATE,
  /** The setup was on set when the frame arrived. */
  ARRIVAL,
  /** The setup was on set when the frame was taken, by its body's clock put right. */
  CAPTURE;

  /**
   * How a frame came to its setup, in words that fit after the setup.
   *
   * @param slate the name of the frame that shows the slate, where one placed it
   */
  Text said(String slate) {
    return switch (this) {
      case PERSON -> Text.of("a person moved it");
      case NAME -> Text.of("its name says so");
      case SLATE -> Text.of("by slate {0}", slate);
      case ARRIVAL -> Text.of("it was on set when the frame arrived");
      case CAPTURE -> Text.of("it was on set when the frame was taken");
    };
  }
}
