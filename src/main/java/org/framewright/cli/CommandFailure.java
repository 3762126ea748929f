package org.framewright.cli;

import org.framewright.base.Problem;

/** A command that could not do its work: the problem, and the exit status. */
final class CommandFailure extends Exception {
  private static final long serialVersionUID = 1L;

  private final ExitStatus status;
  private final transient Problem problem;

  CommandFailure(ExitStatus status, Problem problem) {
    super(problem.sentence());
    this.status = status;
    this.problem = problem;
  }

  CommandFailure(ExitStatus status, String whatAndWhere, String remedy) {
    this(status, new Problem(whatAndWhere, remedy));
  }

  static CommandFailure badInput(String whatAndWhere, String remedy) {
    return new CommandFailure(ExitStatus.BAD_INPUT, whatAndWhere, remedy);
  }

  static CommandFailure refused(String whatAndWhere, String remedy) {
    return new CommandFailure(ExitStatus.REFUSED, whatAndWhere, remedy);
  }

  ExitStatus status() {
    return status;
  }

  Problem problem() {
    return problem;
  }
}
