package org.framewright.renaming;

import org.framewright.base.Problem;

/** A journal that is not as it was written, or that reaches out of its folder. */
final class DamagedJournal extends RenamingFailure {
  private static final long serialVersionUID = 1L;

  private static final String REMEDY =
      "Look at the file; move it out of .framewright/renames to go on without it.";

  /**
   * A fault in a journal.
   *
   * @param line counted from 1; 0 for the whole file
   */
  DamagedJournal(String file, int line, String why) {
    super(problem("the journal " + file + (line == 0 ? "" : ", line " + line) + ": " + why));
  }

  /** What to do about a journal in which this is wrong. */
  static Problem problem(String trouble) {
    return new Problem(trouble, REMEDY);
  }
}
