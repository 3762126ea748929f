package org.framewright.disk;

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

/** Runs a program of Java under strace(1), which kills it or fails its system calls. */
public final class Strace {
  private static final int KILLED = 128 + 9;

  private final Path scratch;
  private final List<Path> only;
  private Path lastTrace;

  /** How a run ended. */
  public record Run(int status, String output) {
    /** Whether a SIGKILL ended it. */
    public boolean killed() {
      return status == KILLED;
    }
  }

  private Strace(Path scratch, List<Path> only) {
    this.scratch = scratch;
    this.only = List.copyOf(only);
  }

  /** One that only looks at calls that are about these files. */
  public Strace on(List<Path> files) {
    return new Strace(scratch, files);
  }

  /** Skips the test where strace cannot be used. */
  public static Strace in(Path scratch) throws IOException, InterruptedException {
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
    return new Strace(scratch, List.of());
  }

  /**
   * Runs a program to its end.
   *
   * @param program its main class, and what it is given
   * @param injections such as {@code renameat2:signal=SIGKILL:when=3}, or calls that are only
   *     traced, such as {@code mkdir,fsync}
   */
  public Run run(List<String> program, String... injections)
      throws IOException, InterruptedException {
    return start(program, injections).end();
  }

  /** Whether the last run met what was to be injected. */
  public boolean injected() throws IOException {
    return Files.readString(lastTrace).contains("(INJECTED)");
  }

  /** Whether the last run made such a call. */
  public boolean met(String call) throws IOException {
    return Files.readString(lastTrace).contains(" " + call + "(");
  }

  /** The same, not waiting for the end. */
  public Running start(List<String> program, String... injections) throws IOException {
    var calls =
        Arrays.stream(injections)
            .map(injection -> injection.replaceFirst(":.*", ""))
            .collect(Collectors.joining(","));
    var trace = Files.createTempFile(scratch, "trace", ".txt");
    lastTrace = trace;
    var output = Files.createTempFile(scratch, "output", ".txt");
    var command = new ArrayList<>(List.of("strace", "-f", "-qq", "-o", trace.toString()));
    command.add("-e");
    command.add("trace=" + calls);
    for (var injection : injections) {
      if (injection.contains(":")) {
        command.addAll(List.of("-e", "inject=" + injection));
      }
    }
    for (var file : only) {
      command.addAll(List.of("-P", file.toString()));
    }
    command.addAll(java());
    command.addAll(program);
    var process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    return new Running(process, output);
  }

  /** A run that has not ended. */
  public record Running(Process process, Path output) {
    /** Waits for the end. */
    public Run end() throws IOException, InterruptedException {
      if (!process.waitFor(60, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError("no end: " + Files.readString(output));
      }
      return new Run(process.exitValue(), Files.readString(output, StandardCharsets.UTF_8));
    }
  }

  private List<String> java() {
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "--enable-native-access=ALL-UNNAMED",
        "-XX:TieredStopAtLevel=1",
        "-XX:+UseSerialGC",
        "-XX:-UsePerfData",
        "-cp",
        System.getProperty("java.class.path"),
        "-Dfile.encoding=UTF-8");
  }
}
