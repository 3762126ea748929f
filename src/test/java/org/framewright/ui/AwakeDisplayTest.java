package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.framewright.base.OperatingSystem;
import org.junit.jupiter.api.Test;

class AwakeDisplayTest {
  private final List<String> told = new ArrayList<>();

  private AwakeDisplay on(OperatingSystem system, String... missing) {
    return new AwakeDisplay(
        system,
        4711,
        command -> {
          if (List.of(missing).contains(command.getFirst())) {
            throw new IOException("no such program");
          }
          told.add("start " + command.getFirst());
          return () -> told.add("end " + command.getFirst());
        });
  }

  @Test
  void theyAreKeptAwakeOnceAndLetSleepAgain() {
    var display = on(OperatingSystem.MACOS);
    display.keep("on set");
    display.keep("on set");
    assertThat(told).containsExactly("start caffeinate");
    display.close();
    display.close();
    display.keep("on set");
    display.close();
    assertThat(told)
        .containsExactly(
            "start caffeinate", "end caffeinate", "start caffeinate", "end caffeinate");
  }

  @Test
  void onLinuxBothAreAskedSinceEachDesktopHearsOne() {
    on(OperatingSystem.LINUX).keep("on set");
    assertThat(told).containsExactly("start systemd-inhibit", "start gnome-session-inhibit");
  }

  @Test
  void aProgramThatIsMissingIsNoMatter() {
    on(OperatingSystem.LINUX, "systemd-inhibit").keep("on set");
    on(OperatingSystem.WINDOWS, "powershell.exe").keep("on set");
    assertThat(told).containsExactly("start gnome-session-inhibit");
  }

  /** By systemd-inhibit(1), tail(1) and caffeinate(8): each ends when this program does. */
  @Test
  void whatHoldsThemAwakeEndsWithThisProgram() {
    assertThat(on(OperatingSystem.LINUX).commands("on set"))
        .allSatisfy(
            command -> assertThat(command).endsWith("tail", "--pid=4711", "-f", "/dev/null"));
    assertThat(on(OperatingSystem.LINUX).commands("on set").getFirst())
        .contains("--what=idle:sleep", "--mode=block", "--why=on set");
    assertThat(on(OperatingSystem.MACOS).commands("on set"))
        .containsExactly(List.of("caffeinate", "-d", "-i", "-w", "4711"));
    var script =
        new String(
            Base64.getDecoder()
                .decode(on(OperatingSystem.WINDOWS).commands("on set").getFirst().getLast()),
            StandardCharsets.UTF_16LE);
    // Microsoft, SetThreadExecutionState: ES_CONTINUOUS 0x80000000, _SYSTEM_ 1, _DISPLAY_REQUIRED
    // 2.
    assertThat(script).contains("0x80000003").endsWith("Wait-Process -Id 4711");
  }
}
