package org.framewright.installer;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A program of this computer. What it says goes into a log of its name.
 *
 * @param program its path
 * @param logs the folder of the logs
 * @param environment what it is given beside this program's own
 */
record Tool(Path program, Path logs, Map<String, String> environment) {

  /** The one of that name on the PATH. */
  static Optional<Tool> find(String name, Release release) {
    var windows = File.separatorChar == '\\';
    return Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .filter(folder -> !folder.isBlank())
        .map(folder -> Path.of(folder, windows ? name + ".exe" : name))
        .filter(Files::isExecutable)
        .findFirst()
        .map(program -> of(program, release));
  }

  /** One of the Java that runs this. */
  static Tool ofJava(String name, Release release) {
    var folder = Path.of(System.getProperty("java.home"), "bin");
    return of(folder.resolve(File.separatorChar == '\\' ? name + ".exe" : name), release);
  }

  /** Makers of packages take the time of what they make from SOURCE_DATE_EPOCH. */
  static Tool of(Path program, Release release) {
    var time = Long.toString(release.time().getEpochSecond());
    return new Tool(
        program, release.logs(), Map.of("SOURCE_DATE_EPOCH", time, "LC_ALL", "C.UTF-8"));
  }

  /** The same with more in its environment. */
  Tool with(Map<String, String> more) {
    var both = new HashMap<>(environment);
    both.putAll(more);
    return new Tool(program, logs, Map.copyOf(both));
  }

  /**
   * Runs it in a folder and waits for it.
   *
   * @throws IOException if it reports a failure; the message has the end of what it said
   */
  void run(Path folder, List<String> arguments) throws IOException {
    Files.createDirectories(logs);
    var log = logs.resolve(program.getFileName().toString().replace(".exe", "") + ".log");
    var command = new ArrayList<>(List.of(program.toString()));
    command.addAll(arguments);
    Files.writeString(log, "$ " + String.join(" ", command) + System.lineSeparator(), APPENDED);
    var builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
    builder.environment().putAll(environment);
    var process = builder.start();
    process.getOutputStream().close();
    if (ended(process) != 0) {
      var said = Files.readAllLines(log);
      var end = said.subList(Math.max(0, said.size() - 12), said.size());
      throw new IOException(log + ":\n" + String.join("\n", end));
    }
  }

  private static int ended(Process process) throws IOException {
    try {
      return process.waitFor();
    } catch (InterruptedException e) {
      process.destroy();
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }

  private static final java.nio.file.OpenOption[] APPENDED = {
    java.nio.file.StandardOpenOption.CREATE, java.nio.file.StandardOpenOption.APPEND
  };
}
