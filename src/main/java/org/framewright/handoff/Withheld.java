package org.framewright.handoff;

/**
 * A pick that cannot be handed off.
 *
 * @param what the frame's name, or the line of the list of picks
 * @param why in a sentence
 * @param remedy its remedy
 * @param tool what of this program it is fixed with
 */
public record Withheld(String what, String why, String remedy, Tool tool) {
  /** The remedy of a pick; a page of the app has other words for it than the command line. */
  public enum Tool {
    NONE,
    RENAMING,
    CHECKING
  }

  /** One that is not fixed with this program. */
  Withheld(String what, String why, String remedy) {
    this(what, why, remedy, Tool.NONE);
  }
}
