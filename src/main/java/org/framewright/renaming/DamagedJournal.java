package org.framewright.renaming;

import org.framewright.base.Problem;
import org.framewright.base.Text;

/** A journal that is not as it was written, or that reaches out of its folder. */
final class DamagedJournal extends RenamingFailure {
  private static final long serialVersionUID = 1L;

  /**
   * A fault in a journal.
   *
   * @param line counted from 1; 0 for the whole file
   */
  DamagedJournal(String file, int line, Text why) {
    super(
        problem(
            line == 0
                ? Text.of("the journal {0}: {1}", file, why)
                : Text.of("the journal {0}, line {1}: {2}", file, line, why)));
  }

  /** What to do about a journal in which this is wrong. */
  static Problem problem(Text trouble) {
    return new Problem(
        trouble, "Look at the file; move it out of .framewright/renames to go on without it.");
  }
}
