package org.framewright.handoff;

import org.framewright.base.Problem;

/**
 * A pick that cannot be handed off.
 *
 * @param problem why; its place is the frame's name, or the line of the list of picks
 * @param tool what of this program it is fixed with
 */
public record Withheld(Problem problem, Tool tool) {
  /** The remedy of a pick; a page of the app has other words for it than the command line. */
  public enum Tool {
    NONE,
    RENAMING,
    CHECKING
  }

  Withheld(String pick, String why, String remedy, Tool tool) {
    this(new Problem(why, pick, remedy), tool);
  }

  /** One that is not fixed with this program. */
  Withheld(String pick, String why, String remedy) {
    this(pick, why, remedy, Tool.NONE);
  }
}
