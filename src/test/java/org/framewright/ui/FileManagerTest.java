package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.framewright.base.OperatingSystem;
import org.framewright.ui.FileManager.Outcome;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class FileManagerTest {
  @TempDir private Path folder;
  private final List<List<String>> started = new ArrayList<>();
  private Path frame;

  @BeforeEach
  void aFrame() throws Exception {
    frame = Files.createFile(folder.resolve("IMG_0001.JPG"));
  }

  private FileManager ending(OperatingSystem family, OptionalInt... ends) {
    return new FileManager(
        family,
        command -> {
          started.add(command);
          return ends[started.size() - 1];
        });
  }

  private static FileManager of(OperatingSystem family) {
    return new FileManager(family, _ -> OptionalInt.of(0));
  }

  /**
   * The method, its two arguments and the object are those of the File Manager D-Bus Interface
   * (freedesktop.org); the way of writing them is dbus-send(1)'s.
   */
  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void onLinuxTheDesktopsFileManagerIsAskedByMessage() {
    assertThat(of(OperatingSystem.LINUX).commands(Path.of("/shoots/a job/IMG_0001.JPG")).getFirst())
        .containsExactly(
            "dbus-send",
            "--session",
            "--print-reply",
            "--reply-timeout=5000",
            "--dest=org.freedesktop.FileManager1",
            "/org/freedesktop/FileManager1",
            "org.freedesktop.FileManager1.ShowItems",
            "array:string:file:///shoots/a%20job/IMG_0001.JPG",
            "string:");
  }

  /** dbus-send(1): the items of an array are separated by commas. */
  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void onLinuxOddNamesStayOneItem() {
    var odd = Path.of("/shoots/--job/-rf, $(x) 'a' \"b\"\n;قميص é.JPG");
    assertThat(of(OperatingSystem.LINUX).commands(odd).getFirst().get(7))
        .isEqualTo(
            "array:string:file:///shoots/--job/-rf%2C%20$(x)%20'a'%20%22b%22%0A;"
                + "%D9%82%D9%85%D9%8A%D8%B5%20%C3%A9.JPG");
  }

  /** xdg-open(1) of the xdg-utils takes one file or address. */
  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void onLinuxWithoutSuchAManagerTheFolderIsOpened() throws Exception {
    var shown =
        ending(OperatingSystem.LINUX, OptionalInt.of(1), OptionalInt.of(0))
            .show(frame.toAbsolutePath());
    assertThat(shown).isEqualTo(new Outcome.Shown(frame));
    assertThat(started).hasSize(2);
    assertThat(started.getLast()).containsExactly("xdg-open", folder.toString());
  }

  /** open(1): "-R Reveals the file(s) in the Finder instead of opening them." */
  @Test
  void onMacOsTheFileIsRevealed() {
    assertThat(of(OperatingSystem.MACOS).commands(frame))
        .containsExactly(List.of("open", "-R", frame.toString()));
  }

  /**
   * Microsoft, "Windows Explorer command-line options": {@code /select,<sub object>}; commas and
   * equals signs separate what is not in quotation marks (G. Chappell, "The Windows Explorer
   * Command Line").
   */
  @Test
  void onWindowsTheFileIsChosenInItsFolder() throws Exception {
    var odd = folder.resolve("a, b = c.JPG");
    assertThat(of(OperatingSystem.WINDOWS).commands(odd))
        .containsExactly(List.of("explorer.exe", "/select,", "\"" + odd + "\""));
    assertThat(ending(OperatingSystem.WINDOWS, OptionalInt.of(1)).show(frame))
        .as("Explorer ends with 1 also where it works")
        .isEqualTo(new Outcome.Shown(frame));
  }

  @Test
  void aFileManagerThatGoesOnRunningHasShownIt() throws Exception {
    assertThat(ending(OperatingSystem.LINUX, OptionalInt.empty()).show(frame))
        .isEqualTo(new Outcome.Shown(frame));
    assertThat(started).hasSize(1);
  }

  @Test
  void whereNoProgramIsThereItSaysSo() throws Exception {
    var bare =
        new FileManager(
            OperatingSystem.LINUX,
            command -> {
              throw new IOException("no " + command.getFirst());
            });
    assertThat(bare.show(frame)).isEqualTo(new Outcome.NoManager(frame));
  }

  @Test
  void ofAFileThatIsGoneItsFolderIsShown() throws Exception {
    assertThat(
            ending(OperatingSystem.MACOS, OptionalInt.of(0)).show(folder.resolve("IMG_0002.JPG")))
        .isEqualTo(new Outcome.Shown(folder));
    assertThat(started.getFirst().getLast()).isEqualTo(folder.toString());
    var away = folder.resolve("unplugged").resolve("IMG_0002.JPG");
    assertThat(ending(OperatingSystem.MACOS).show(away)).isEqualTo(new Outcome.Gone(away));
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void aNameThatBeginsWithAHyphenIsNoOption() throws Exception {
    var odd = Path.of("-R"); // Nothing is there: the folder that the tests run in is shown.
    for (var family : OperatingSystem.values()) {
      new FileManager(
              family,
              command -> {
                started.add(command);
                return OptionalInt.of(family == OperatingSystem.LINUX ? 1 : 0);
              })
          .show(odd);
    }
    assertThat(started)
        .hasSize(5)
        .allSatisfy(command -> assertThat(command.getLast()).doesNotStartWith("-"));
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void aRealProgramGetsItsArgumentsAsTheyAre() throws Exception {
    var odd = Files.createFile(folder.resolve("-n $(touch x) 'q' ;.JPG"));
    assertThat(FileManager.start(List.of("test", "-f", odd.toString())))
        .isEqualTo(OptionalInt.of(0));
    assertThat(folder.resolve("x")).doesNotExist();
  }
}
