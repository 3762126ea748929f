package org.framewright.cli;

/**
 * A command that could not do its work: what went wrong and where, what would mend it, and the exit
 * status.
 */
final class CommandFailure extends Exception {
  private static final long serialVersionUID = 1L;

  private final ExitStatus status;
  private final String mend;

  CommandFailure(ExitStatus status, String whatAndWhere, String mend) {
    super(whatAndWhere);
    this.status = status;
    this.mend = mend;
  }

  static CommandFailure badInput(String whatAndWhere, String mend) {
    return new CommandFailure(ExitStatus.BAD_INPUT, whatAndWhere, mend);
  }

  static CommandFailure refused(String whatAndWhere, String mend) {
    return new CommandFailure(ExitStatus.REFUSED, whatAndWhere, mend);
  }

  ExitStatus status() {
    return status;
  }

  String mend() {
    return mend;
  }
}
