package org.framewright.ui;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import org.framewright.base.OperatingSystem;

/**
 * Shows a file or folder in the system's own file manager. No shell takes part: a program is
 * started with its arguments one by one, and a path is always absolute, so that a name that begins
 * with a hyphen is no option.
 *
 * <ul>
 *   <li>Linux and the like: {@code ShowItems} of the File Manager D-Bus Interface
 *       (freedesktop.org), which chooses the file in its folder; where nobody answers, {@code
 *       xdg-open} of the folder (xdg-utils).
 *   <li>macOS: {@code open -R} (open(1)).
 *   <li>Windows: {@code explorer /select,} with the path in quotation marks, since Explorer takes
 *       commas and equals signs for separators (Microsoft, "Windows Explorer command-line
 *       options").
 * </ul>
 */
final class FileManager {
  /** Starts a program. */
  @FunctionalInterface
  interface Starter {
    /**
     * Starts it and waits a while for its end.
     *
     * @return what it ended with; nothing if it still runs, as a file manager may
     * @throws IOException if there is no such program
     */
    OptionalInt start(List<String> command) throws IOException, InterruptedException;
  }

  /** What came of it. */
  sealed interface Outcome {
    /**
     * It is shown.
     *
     * @param path what is; where the file is not there any more, the folder that it was in
     */
    record Shown(Path path) implements Outcome {}

    /** No file manager was found. */
    record NoManager(Path path) implements Outcome {}

    /** Neither the file nor the folder that it was in is there. */
    record Gone(Path path) implements Outcome {}
  }

  private static final int PATIENCE_SECONDS = 8;

  private final OperatingSystem system;
  private final Starter starter;

  FileManager(OperatingSystem system, Starter starter) {
    this.system = system;
    this.starter = starter;
  }

  /** That of this computer. */
  static FileManager here() {
    return new FileManager(OperatingSystem.current(), FileManager::start);
  }

  /** Shows a file or a folder; takes a while, so not on the interface thread. */
  Outcome show(Path path) throws InterruptedException {
    var there = nearest(path.toAbsolutePath().normalize());
    if (there.isEmpty()) {
      return new Outcome.Gone(path);
    }
    for (var command : commands(there.get())) {
      if (works(command)) {
        return new Outcome.Shown(there.get());
      }
    }
    return new Outcome.NoManager(there.get());
  }

  private static Optional<Path> nearest(Path path) {
    return Files.exists(path)
        ? Optional.of(path)
        : Optional.ofNullable(path.getParent()).filter(Files::isDirectory);
  }

  private boolean works(List<String> command) throws InterruptedException {
    try {
      var ended = starter.start(command);
      // Explorer ends with 1 whatever came of it.
      return system == OperatingSystem.WINDOWS || ended.isEmpty() || ended.getAsInt() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  /** What is tried, one after the other until one works. */
  List<List<String>> commands(Path path) {
    return switch (system) {
      case LINUX, OTHER ->
          List.of(
              List.of(
                  "dbus-send",
                  "--session",
                  "--print-reply",
                  "--reply-timeout=5000",
                  "--dest=org.freedesktop.FileManager1",
                  "/org/freedesktop/FileManager1",
                  "org.freedesktop.FileManager1.ShowItems",
                  "array:string:" + uri(path),
                  "string:"),
              List.of("xdg-open", folder(path).toString()));
      case MACOS -> List.of(List.of("open", "-R", path.toString()));
      case WINDOWS -> List.of(List.of("explorer.exe", "/select,", "\"" + path + "\""));
    };
  }

  /** The sender of the message takes a comma for the end of an item. */
  private static String uri(Path path) {
    return path.toUri().toASCIIString().replace(",", "%2C");
  }

  private static Path folder(Path path) {
    return Files.isDirectory(path) || path.getParent() == null ? path : path.getParent();
  }

  static OptionalInt start(List<String> command) throws IOException, InterruptedException {
    var process =
        new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    process.getOutputStream().close();
    return process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)
        ? OptionalInt.of(process.exitValue())
        : OptionalInt.empty();
  }
}
