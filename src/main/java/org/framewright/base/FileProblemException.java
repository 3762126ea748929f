package org.framewright.base;

import java.io.IOException;

/** A file or folder that cannot be used as it is, put into words where it was found. */
public final class FileProblemException extends IOException {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  public FileProblemException(Problem problem) {
    super(problem.sentence());
    this.problem = problem;
  }

  public Problem problem() {
    return problem;
  }
}
