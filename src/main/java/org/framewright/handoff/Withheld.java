package org.framewright.handoff;

import org.framewright.base.Problem;
import org.framewright.base.Text;

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

  Withheld(String frame, Text why, String remedy, Tool tool) {
    this(new Problem(why, frame, remedy), tool);
  }

  /** One of which no words change with what they tell. */
  Withheld(String frame, String why, String remedy, Tool tool) {
    this(frame, Text.of(why), remedy, tool);
  }

  /** One that is not fixed with this program. */
  Withheld(String frame, Text why, String remedy) {
    this(frame, why, remedy, Tool.NONE);
  }
}
