package org.framewright.renaming;

import java.io.IOException;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;

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
  static Problem describe(String undone, IOException failure) {
    var cause = describe(failure);
    return new Problem(undone + ": " + cause.sentence(), cause.remedy());
  }
}
