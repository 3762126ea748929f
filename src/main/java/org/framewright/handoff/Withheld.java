package org.framewright.handoff;

/**
 * A pick that cannot be handed off.
 *
 * @param what the frame's name, or the line of the list of picks
 * @param why in a sentence
 * @param mend what would mend it
 * @param tool what of this program it is mended with
 */
public record Withheld(String what, String why, String mend, Tool tool) {
  /** What mends a pick; a page of the app has other words for it than the command line. */
  public enum Tool {
    NONE,
    RENAMING,
    CHECKING
  }

  /** One that is not mended with this program. */
  Withheld(String what, String why, String mend) {
    this(what, why, mend, Tool.NONE);
  }
}
