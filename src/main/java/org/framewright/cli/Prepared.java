package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Answers that are there before any command line is read. */
final class Prepared {
  /** In the program's folder: what {@code framewright --help} says, made when it was packaged. */
  static final String HELP = "help.txt";

  private Prepared() {}

  /** What a program called with these arguments says, if that needs no work. */
  static Optional<String> answer(String[] args) {
    return args.length != 1
        ? Optional.empty()
        : switch (args[0]) {
          case "--version", "-V" -> Optional.of(Framewright.VERSION + System.lineSeparator());
          case "--help", "-h" -> help();
          default -> Optional.empty();
        };
  }

  private static Optional<String> help() {
    var home = System.getProperty("framewright.home");
    if (home == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(Files.readString(Path.of(home, HELP)));
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
