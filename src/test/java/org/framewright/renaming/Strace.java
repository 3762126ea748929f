package org.framewright.renaming;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Assumptions;

/** Runs {@link SceneProgram} under strace(1), which kills it or fails its system calls. */
final class Strace {
  private static final int KILLED = 128 + 9;

  private final Path scratch;
  private Path lastTrace;

  /** How a run ended. */
  record Run(int status, String output) {
    boolean killed() {
      return status == KILLED;
    }
  }

  private Strace(Path scratch) {
    this.scratch = scratch;
  }

  /** Skips the test where strace cannot be used. */
  static Strace in(Path scratch) throws IOException, InterruptedException {
    try {
      var probe =
          new ProcessBuilder("strace", "-qq", "-e", "trace=none", "true")
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      Assumptions.assumeTrue(
          probe.waitFor() == 0, "strace may not trace here; the kill tests are skipped");
    } catch (IOException e) {
      Assumptions.abort("there is no strace here; the kill tests are skipped");
    }
    return new Strace(scratch);
  }

  /**
   * Runs one step.
   *
   * @param injections such as {@code renameat2:signal=SIGKILL:when=3}
   */
  Run run(String step, Path root, String... injections) throws IOException, InterruptedException {
    return start(step, root, injections).end();
  }

  /** Whether the last run met what was to be injected. */
  boolean injected() throws IOException {
    return Files.readString(lastTrace).contains("(INJECTED)");
  }

  Running start(String step, Path root, String... injections) throws IOException {
    var calls =
        Arrays.stream(injections)
            .map(injection -> injection.substring(0, injection.indexOf(':')))
            .collect(Collectors.joining(","));
    var trace = Files.createTempFile(scratch, "trace", ".txt");
    lastTrace = trace;
    var output = Files.createTempFile(scratch, "output", ".txt");
    var command = new ArrayList<>(List.of("strace", "-f", "-qq", "-o", trace.toString()));
    command.add("-e");
    command.add("trace=" + calls);
    for (var injection : injections) {
      command.add("-e");
      command.add("inject=" + injection);
    }
    command.addAll(java());
    command.addAll(List.of(SceneProgram.class.getName(), step, root.toString()));
    var process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    return new Running(process, output);
  }

  /** A run that has not ended. */
  record Running(Process process, Path output) {
    Run end() throws IOException, InterruptedException {
      if (!process.waitFor(60, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError("no end: " + Files.readString(output));
      }
      return new Run(process.exitValue(), Files.readString(output, StandardCharsets.UTF_8));
    }
  }

  private List<String> java() {
    var classes =
        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
            .filter(entry -> entry.endsWith("classes") || entry.contains("jackson-core"))
            .collect(Collectors.joining(File.pathSeparator));
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "--enable-native-access=ALL-UNNAMED",
        "-XX:TieredStopAtLevel=1",
        "-XX:+UseSerialGC",
        "-XX:-UsePerfData",
        "-cp",
        classes,
        "-Dfile.encoding=UTF-8");
  }
}
