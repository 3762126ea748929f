package org.framewright.cli;

/** What a command says to the shell. */
enum ExitStatus {
  /** All of it was done and no error was found. */
  DONE(0),
  /**
   * It was done, and something needs a person: an error finding, a blocked rename, a missing copy.
   */
  NEEDS_A_PERSON(1),
  /** The input or the usage was bad; nothing was changed. */
  BAD_INPUT(2),
  /** Refused for safety; nothing was changed. */
  REFUSED(3),
  /** Interrupted or failed half-way; the message says how to recover. */
  FAILED(4);

  private final int code;

  ExitStatus(int code) {
    this.code = code;
  }

  int code() {
    return code;
  }
}
