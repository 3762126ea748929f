package org.framewright.copies;

import org.framewright.base.Problem;

/** A question about copies that cannot be asked; nothing was changed. */
public final class CopiesException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;
  private final boolean refused;

  private CopiesException(Problem problem, boolean refused) {
    super(problem.sentence());
    this.problem = problem;
    this.refused = refused;
  }

  static CopiesException badInput(String what, String where, String remedy) {
    return new CopiesException(new Problem(what, where, remedy), false);
  }

  static CopiesException refused(String what, String where, String remedy) {
    return refused(new Problem(what, where, remedy));
  }

  static CopiesException refused(Problem problem) {
    return new CopiesException(problem, true);
  }

  public Problem problem() {
    return problem;
  }

  /** Whether it was refused for safety, and not because the folders make no sense. */
  public boolean isRefused() {
    return refused;
  }
}
