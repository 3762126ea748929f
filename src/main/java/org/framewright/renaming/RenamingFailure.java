package org.framewright.renaming;

import java.io.IOException;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** A failure that renaming itself can put into words. */
abstract sealed class RenamingFailure extends IOException permits MoveFailure, DamagedJournal {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  RenamingFailure(Problem problem) {
    super(problem.sentence());
    this.problem = problem;
  }

  Problem problem() {
    return problem;
  }

  /** Any failure of a disk in words. */
  static Problem describe(IOException failure) {
    return failure instanceof RenamingFailure known ? known.problem() : FileProblems.of(failure);
  }

  /** A failure of a disk in words, and what it kept from being done. */
  static Problem describe(Text undone, IOException failure) {
    var cause = describe(failure);
    return new Problem(
        cause.where().isBlank()
            ? Text.of("{0}: {1}", undone, cause.fault())
            : Text.of("{0}: {1}: {2}", undone, cause.where(), cause.fault()),
        cause.fix());
  }
}
