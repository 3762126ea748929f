package org.framewright.ui;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Objects;
import org.framewright.base.OperatingSystem;

/**
 * Keeps the displays awake while a job is open: a client who looks at a black screen is no help.
 * Each system has a program that does so for as long as it runs; it ends with this program, however
 * this one ends. Where there is none, the displays do what the system's settings say.
 *
 * <ul>
 *   <li>Linux: {@code systemd-inhibit} (systemd-inhibit(1)) and, since GNOME goes by its own
 *       session, {@code gnome-session-inhibit} too; each holds while {@code tail --pid} (tail(1) of
 *       coreutils) waits for the end of this program.
 *   <li>macOS: {@code caffeinate -d -i -w} (caffeinate(8)).
 *   <li>Windows: SetThreadExecutionState with ES_CONTINUOUS, ES_SYSTEM_REQUIRED and
 *       ES_DISPLAY_REQUIRED (Microsoft), called by a PowerShell that waits for this program.
 * </ul>
 */
final class AwakeDisplay implements AutoCloseable {
  /** Starts a program that runs until it is ended. */
  @FunctionalInterface
  interface Starter {
    /**
     * Starts it.
     *
     * @return ends it
     * @throws IOException if there is no such program
     */
    Runnable start(List<String> command) throws IOException;
  }

  private final OperatingSystem system;
  private final long process;
  private final Starter starter;
  private final List<Runnable> running = new ArrayList<>();

  AwakeDisplay(OperatingSystem system, long process, Starter starter) {
    this.system = system;
    this.process = process;
    this.starter = starter;
  }

  /** Those of this computer. */
  static AwakeDisplay here() {
    return new AwakeDisplay(
        OperatingSystem.current(), ProcessHandle.current().pid(), AwakeDisplay::start);
  }

  /**
   * Keeps them awake; takes a moment, so not on the interface thread.
   *
   * @param why for people, where the system tells them
   */
  synchronized void keep(String why) {
    if (running.isEmpty()) {
      for (var command : commands(why)) {
        try {
          running.add(starter.start(command));
        } catch (IOException e) {
          // There is no such program; another one may do.
        }
      }
    }
  }

  /** Lets them sleep when the system likes. */
  @Override
  public synchronized void close() {
    running.forEach(Runnable::run);
    running.clear();
  }

  /** What is run, each for itself. */
  List<List<String>> commands(String why) {
    var pid = Long.toString(process);
    return switch (system) {
      case LINUX, OTHER -> {
        var until = List.of("tail", "--pid=" + pid, "-f", "/dev/null");
        yield List.of(
            with(
                until,
                "systemd-inhibit",
                "--what=idle:sleep",
                "--who=Framewright",
                "--why=" + why,
                "--mode=block"),
            with(
                until,
                "gnome-session-inhibit",
                "--app-id",
                "framewright",
                "--inhibit",
                "idle",
                "--reason",
                why));
      }
      case MACOS -> List.of(List.of("caffeinate", "-d", "-i", "-w", pid));
      case WINDOWS ->
          List.of(
              List.of(
                  "powershell.exe",
                  "-NoProfile",
                  "-NonInteractive",
                  "-WindowStyle",
                  "Hidden",
                  "-EncodedCommand",
                  encoded(script() + pid)));
    };
  }

  private static List<String> with(List<String> until, String... command) {
    var whole = new ArrayList<>(List.of(command));
    whole.addAll(until);
    return whole;
  }

  private static String script() {
    try (var script =
        Objects.requireNonNull(AwakeDisplay.class.getResourceAsStream("keep-awake.ps1"))) {
      return new String(script.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** PowerShell takes a command in Base64 of UTF-16 whatever signs it has. */
  private static String encoded(String command) {
    return Base64.getEncoder().encodeToString(command.getBytes(StandardCharsets.UTF_16LE));
  }

  private static Runnable start(List<String> command) throws IOException {
    var process =
        new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    process.getOutputStream().close();
    return () -> {
      // The one that holds has the one that waits for a child.
      process.descendants().forEach(ProcessHandle::destroy);
      process.destroy();
    };
  }
}
