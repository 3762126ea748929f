package org.framewright.ui.lists;

import org.framewright.base.Text;
import org.framewright.shotlist.ListProblem;
import org.framewright.shotlist.WayOn;

/** A line of what comes of a list. */
sealed interface ResultLine {

  /** A way to read it, for a person to choose. */
  record Way(WayOn way) implements ResultLine {}

  /**
   * Something that was found at a line of the file.
   *
   * @param stops whether the list cannot be taken for it
   */
  record Found(ListProblem problem, boolean stops) implements ResultLine {}

  /** How a setup differs. */
  enum Kind {
    ADDED,
    CHANGED,
    REMOVED,
    /** Gone from the new list, but work was done on it: it stays, whatever is taken. */
    KEPT
  }

  /**
   * One setup that differs.
   *
   * @param code the setup's
   * @param title of it, as the new list has it
   * @param detail what else there is to say, in plain words
   */
  record Difference(Kind kind, String code, String title, Text detail) implements ResultLine {
    boolean canBeTaken() {
      return kind != Kind.KEPT;
    }
  }
}
