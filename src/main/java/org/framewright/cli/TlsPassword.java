package org.framewright.cli;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The password of a key file: never an argument, since other users see those. */
final class TlsPassword {
  static final String VARIABLE = "FRAMEWRIGHT_TLS_PASSWORD";

  private TlsPassword() {}

  /** From the environment; else a person at the terminal is asked, who does not see it. */
  static char[] of(Map<String, String> environment, Path file) throws CommandFailure {
    return of(environment, file, TlsPassword::typed);
  }

  static char[] of(
      Map<String, String> environment, Path file, Function<String, Optional<char[]>> ask)
      throws CommandFailure {
    var given = environment.get(VARIABLE);
    if (given != null) {
      return given.toCharArray();
    }
    return ask.apply("Password of " + file + ": ")
        .orElseThrow(
            () ->
                CommandFailure.badInput(
                    "the password of " + file + " is not known",
                    "Set the variable " + VARIABLE + ", or start the command in a terminal."));
  }

  @SuppressWarnings("SystemConsoleNull") // some runtimes have none where a stream leads elsewhere
  static Optional<char[]> typed(String question) {
    return Optional.ofNullable(System.console())
        .filter(console -> console.isTerminal())
        .map(console -> console.readPassword("%s", question));
  }
}
