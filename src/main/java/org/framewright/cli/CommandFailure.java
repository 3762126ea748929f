package org.framewright.cli;

/**
 * A command that could not do its work: what went wrong and where, its remedy, and the exit status.
 */
final class CommandFailure extends Exception {
  private static final long serialVersionUID = 1L;

  private final ExitStatus status;
  private final String remedy;

  CommandFailure(ExitStatus status, String whatAndWhere, String remedy) {
    super(whatAndWhere);
    this.status = status;
    this.remedy = remedy;
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

  String remedy() {
    return remedy;
  }
}
