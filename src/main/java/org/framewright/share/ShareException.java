package org.framewright.share;

import java.io.IOException;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** The page cannot be served, put into words. */
public final class ShareException extends IOException {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  ShareException(Text what, String where, Text remedy) {
    this(new Problem(what, where, remedy));
  }

  private ShareException(Problem problem) {
    super(problem.sentence());
    this.problem = problem;
  }

  public Problem problem() {
    return problem;
  }
}
