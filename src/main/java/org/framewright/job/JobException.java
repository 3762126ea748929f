package org.framewright.job;

import org.framewright.base.Problem;
import org.framewright.base.Text;

/** A request that cannot be met, or a folder that cannot be read. */
public final class JobException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  /** Of a problem that another room found. */
  public JobException(Problem problem) {
    super(problem.sentence());
    this.problem = problem;
  }

  /**
   * @param where a file, a line, a setup; empty where the message says it
   * @param remedy what to do about it; may be empty
   */
  public JobException(Text what, String where, Text remedy) {
    this(new Problem(what, where, remedy));
  }

  public Problem problem() {
    return problem;
  }

  public String what() {
    return problem.what();
  }

  public String where() {
    return problem.where();
  }

  public String remedy() {
    return problem.remedy();
  }
}
