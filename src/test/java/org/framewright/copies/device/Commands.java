package org.framewright.copies.device;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Assumptions;

/** Programs that make volumes for tests. */
public final class Commands {
  private Commands() {}

  private record Ran(int status, String output) {}

  private static Ran start(List<String> command) throws IOException {
    var process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    var output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ran(process.onExit().join().exitValue(), output);
  }

  /** Whether it ran and succeeded. */
  public static boolean run(List<String> command) {
    try {
      return start(command).status() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  /** What it said; skips the test where it is missing or may not do it. */
  public static String runOrSkip(List<String> command) {
    try {
      var ran = start(command);
      Assumptions.assumeTrue(ran.status() == 0, command + ": " + ran.output());
      return ran.output();
    } catch (IOException e) {
      return Assumptions.abort(command.getFirst() + " is not here; this volume is not tried");
    }
  }
}
