package org.framewright.handoff;

import org.framewright.base.Problem;

/**
 * A wanted frame that cannot be handed off.
 *
 * @param problem why; its place is the frame's name
 * @param tool what of this program it is fixed with
 */
public record Withheld(Problem problem, Tool tool) {
  /** The remedy of one; a page of the app has other words for it than the command line. */
  public enum Tool {
    NONE,
    RENAMING,
    CHECKING
  }

  Withheld(String frame, String why, String remedy, Tool tool) {
    this(new Problem(why, frame, remedy), tool);
  }

  /** One that is not fixed with this program. */
  Withheld(String frame, String why, String remedy) {
    this(frame, why, remedy, Tool.NONE);
  }
}
