package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A day on a display of the window system: real windows, keys and clicks, where Xvfb, a window
 * manager and the toolkit's own libraries are there.
 */
@Tag("slow")
class RealDisplayTest {
  private static final long MINUTES = 8;
  private static final String TWO_MONITORS =
      """
      Section "ServerFlags"
        Option "AutoAddDevices" "false"
        Option "AutoAddGPU" "false"
        Option "AllowMouseOpenFail" "true"
        Option "DontVTSwitch" "true"
      EndSection
      Section "Device"
        Identifier "none"
        Driver "dummy"
        VideoRam 65536
      EndSection
      Section "Monitor"
        Identifier "monitor"
        HorizSync 5-1000
        VertRefresh 5-200
      EndSection
      Section "Screen"
        Identifier "screen"
        Device "none"
        Monitor "monitor"
        DefaultDepth 24
        SubSection "Display"
          Depth 24
          Modes "%s"
          Virtual 4096 2048
        EndSubSection
      EndSection
      """
          .formatted(OnTwoDisplays.MODE);

  @TempDir private Path folder;
  private final List<Process> running = new ArrayList<>();

  @AfterEach
  void end() {
    running.reversed().forEach(Process::destroy);
  }

  @Test
  void aDayOnARealDisplayGoesWithoutAFault() throws Exception {
    goesWithoutAFault(OnRealDisplay.class);
  }

  @Test
  void tenSetupsByScansOnARealDisplayLeaveNothingInTheField() throws Exception {
    goesWithoutAFault(ScansOnRealDisplay.class);
  }

  @Test
  void theClientsScreenComesAndGoesWithTheSecondMonitor() throws Exception {
    var configuration = Files.writeString(folder.resolve("xorg.conf"), TWO_MONITORS);
    var display =
        server(
            List.of(
                "Xorg",
                "-displayfd",
                "1",
                "-noreset",
                "-novtswitch",
                "-sharevts",
                "-nolisten",
                "tcp",
                "-config",
                configuration.toString(),
                "-logfile",
                folder.resolve("xorg.log").toString()));
    assumeTrue(
        display.isPresent()
            && runs(display.get(), "--addmode", OnTwoDisplays.SECOND, OnTwoDisplays.MODE)
            && runs(
                display.get(),
                "--output",
                OnTwoDisplays.SECOND,
                "--mode",
                OnTwoDisplays.MODE,
                "--right-of",
                OnTwoDisplays.FIRST)
            // The driver looks at what is plugged in only when it is asked.
            && runs(display.get(), "--query"),
        "Xorg with its dummy driver, or xrandr, does not run here: no second monitor was tried");
    goesWithoutAFault(OnTwoDisplays.class, display.get());
  }

  private boolean runs(String display, String... words) throws Exception {
    var command = new ArrayList<>(List.of("xrandr"));
    command.addAll(List.of(words));
    var process = start(display, command);
    return process.isPresent() && process.get().waitFor() == 0;
  }

  private void goesWithoutAFault(Class<?> program) throws Exception {
    var display =
        server(
            List.of("Xvfb", "-displayfd", "1", "-screen", "0", "1600x1000x24", "-nolisten", "tcp"));
    assumeTrue(
        display.isPresent(), "Xvfb is not installed: the app was not tried on a real display");
    goesWithoutAFault(program, display.get());
  }

  private void goesWithoutAFault(Class<?> program, String display) throws Exception {
    // Without a window manager no window gets the keys.
    var manager = start(display, List.of("openbox"));
    assumeTrue(
        manager.isPresent(), "openbox is not installed: the app was not tried on a real display");
    var said = folder.resolve("said.txt");
    var day =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED",
                "-Dprism.order=sw",
                "-Dglass.gtk.uiScale=1",
                "-Dtestfx.robot=glass",
                "-cp",
                System.getProperty("java.class.path"),
                program.getName(),
                folder.toString())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile());
    day.environment().put("DISPLAY", display);
    day.environment().put("GDK_BACKEND", "x11");
    day.environment().remove("WAYLAND_DISPLAY");
    var process = day.start();
    running.add(process);
    var inTime = process.waitFor(MINUTES, TimeUnit.MINUTES);
    var text = Files.readString(said);
    assertThat(inTime).as(text).isTrue();
    assumeTrue(
        process.exitValue() != OnRealDisplay.NO_TOOLKIT,
        "the toolkit shows no window here, libgtk-3 may not be installed: " + text);
    assumeTrue(
        process.exitValue() != OnTwoDisplays.ONE_DISPLAY,
        "the toolkit sees no second monitor here: " + text);
    assumeTrue(
        process.exitValue() != ScansOnRealDisplay.NO_SCANNER,
        "xdotool or setxkbmap is not installed: no scanner was played on a real display");
    assertThat(process.exitValue()).as(text).isZero();
    assertThat(text).contains(OnRealDisplay.DONE).doesNotContain("Exception in thread");
  }

  /** A display of its own; nothing if there is none to be had. */
  private Optional<String> server(List<String> command) throws IOException {
    Process server;
    try {
      server = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    } catch (IOException e) {
      return Optional.empty();
    }
    running.add(server);
    var number =
        new BufferedReader(
                new InputStreamReader(server.getInputStream(), StandardCharsets.US_ASCII))
            .readLine();
    return Optional.ofNullable(number).map(found -> ":" + found.strip());
  }

  private Optional<Process> start(String display, List<String> command) {
    try {
      var builder =
          new ProcessBuilder(command)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD);
      builder.environment().put("DISPLAY", display);
      var process = builder.start();
      running.add(process);
      return Optional.of(process);
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
