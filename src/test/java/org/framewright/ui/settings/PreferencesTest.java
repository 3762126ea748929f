package org.framewright.ui.settings;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.framewright.base.OperatingSystem;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PreferencesTest {
  @TempDir private Path folder;

  private final List<IOException> failures = new ArrayList<>();

  private Preferences read(Path file) {
    return Preferences.read(file, Runnable::run, failures::add);
  }

  private Preferences read() throws IOException {
    return read(folder.resolve("habits/preferences.json"));
  }

  @Test
  void keepsWordsAndNumbersBetweenRuns() throws IOException {
    var first = read();
    first.put("look", "sunlight");
    first.put("scale", 1.2);
    var second = read();
    assertThat(second.get("look")).contains("sunlight");
    assertThat(second.number("scale", 1)).isEqualTo(1.2);
    assertThat(second.number("window.width", 1180)).isEqualTo(1180);
  }

  @Test
  void remembersTheLatestEightWithoutDoubles() throws IOException {
    var first = read();
    for (var i = 1; i <= 10; i++) {
      first.remember("recent.jobs", "/jobs/" + i);
    }
    first.remember("recent.jobs", "/jobs/5");
    assertThat(read().recent("recent.jobs"))
        .containsExactly(
            "/jobs/5",
            "/jobs/10",
            "/jobs/9",
            "/jobs/8",
            "/jobs/7",
            "/jobs/6",
            "/jobs/4",
            "/jobs/3");
  }

  @Test
  void setsAnUnreadableFileAsideAndStartsAfresh() throws IOException {
    var file = folder.resolve("preferences.json");
    Files.writeString(file, "{ torn");
    var preferences = read(file);
    assertThat(preferences.get("look")).isEmpty();
    assertThat(folder.resolve("preferences.json.unreadable")).hasContent("{ torn");
  }

  @Test
  void aSecondUnreadableFileDoesNotTakeThePlaceOfTheFirst() throws IOException {
    var file = folder.resolve("preferences.json");
    for (var torn : List.of("{ one", "{ two")) {
      Files.writeString(file, torn);
      read(file);
    }
    assertThat(folder.resolve("preferences.json.unreadable")).hasContent("{ one");
    assertThat(folder.resolve("preferences.json.unreadable-2")).hasContent("{ two");
  }

  @Test
  void aFileThatCannotBeReadStaysAsItIs() throws IOException {
    var file = Files.createDirectory(folder.resolve("preferences.json"));
    var preferences = read(file);
    preferences.put("look", "sunlight");
    assertThat(preferences.get("look")).as("in this run").contains("sunlight");
    assertThat(file).isEmptyDirectory();
    assertThat(failures).hasSize(1);
  }

  @Test
  void whatALinkLeadsToIsWrittenAndTheLinkStays() throws IOException {
    var kept = Files.writeString(folder.resolve("kept.json"), "{}");
    var link = SymbolicLinks.make(folder.resolve("preferences.json"), kept);
    read(link).put("look", "sunlight");
    assertThat(link).isSymbolicLink();
    assertThat(kept).content().contains("sunlight");
  }

  @Test
  void aFailureToWriteIsReportedOnceUntilItWorksAgain() throws IOException {
    var preferences = read();
    var inTheWay = Files.writeString(folder.resolve("habits"), "a file where the folder goes");
    preferences.put("scale", 1.1);
    preferences.put("scale", 1.2);
    assertThat(failures).hasSize(1);
    Files.delete(inTheWay);
    preferences.put("scale", 1.3);
    assertThat(read().number("scale", 1)).isEqualTo(1.3);
    assertThat(failures).hasSize(1);
  }

  @Test
  void aPathOfAnotherSystemIsNone() {
    var preferences = read(folder.resolve("p.json"));
    preferences.remember("recent.jobs", "/jobs/1");
    preferences.remember("recent.jobs", "/jobs/\0");
    preferences.put("place", "\0");
    assertThat(preferences.recentPaths("recent.jobs")).containsExactly(Path.of("/jobs/1"));
    assertThat(preferences.path("place")).isEmpty();
  }

  @Test
  void writesNothingWhileNothingChanges() throws IOException {
    var writes = new ArrayList<Runnable>();
    var preferences = Preferences.read(folder.resolve("p.json"), writes::add, failures::add);
    preferences.put("look", "neutral");
    preferences.put("scale", 1);
    preferences.put("scale", 2);
    assertThat(writes).as("one write for a burst of changes").hasSize(1);
    writes.removeFirst().run();
    preferences.put("look", "neutral");
    preferences.remove("never kept");
    assertThat(writes).isEmpty();
    assertThat(List.of(folder.toFile().list())).containsExactly("p.json");
  }

  /** XDG Base Directory Specification: a relative path is to be ignored. */
  @Test
  void theUsualPlaceIsThePlatformsOwn() {
    var home = Path.of("/home/someone");
    assertThat(Places.usual(OperatingSystem.LINUX, home, Map.of()).preferences())
        .isEqualTo(home.resolve(".config/framewright/preferences.json"));
    assertThat(
            Places.usual(OperatingSystem.LINUX, home, Map.of("XDG_CONFIG_HOME", "/conf"))
                .preferences())
        .isEqualTo(Path.of("/conf/framewright/preferences.json"));
    assertThat(
            Places.usual(OperatingSystem.LINUX, home, Map.of("XDG_CONFIG_HOME", "conf"))
                .preferences())
        .isEqualTo(home.resolve(".config/framewright/preferences.json"));
    assertThat(Places.usual(OperatingSystem.MACOS, home, Map.of()).log())
        .isEqualTo(home.resolve("Library/Application Support/Framewright/framewright.log"));
  }

  @Test
  void twoWindowsOfTheProgramDoNotTakeFromEachOther() throws IOException {
    var one = read();
    var other = read();
    one.put("studio.credit", "Nova");
    other.put("look", "sunlight");
    one.put("scale", 1.2);
    other.remove("studio.credit");
    assertThat(read().get("look")).contains("sunlight");
    assertThat(read().number("scale", 1)).isEqualTo(1.2);
    assertThat(read().get("studio.credit")).contains("Nova");
  }

  @Test
  void whatCouldNotBeWrittenGoesWithWhatIsKeptNext() throws IOException {
    var failures = new ArrayList<IOException>();
    var inside = folder.resolve("deep");
    Files.writeString(inside, "a file in the way");
    var preferences =
        Preferences.read(inside.resolve("preferences.json"), Runnable::run, failures::add);
    preferences.put("look", "sunlight");
    Files.delete(inside);
    preferences.put("scale", 1.2);
    var again = Preferences.read(inside.resolve("preferences.json"), Runnable::run, failures::add);
    assertThat(again.get("look")).contains("sunlight");
    assertThat(failures).hasSize(1);
  }

  @Test
  void aFileThatIsFarTooLargeIsLeftAsItIs() throws IOException {
    var failures = new ArrayList<IOException>();
    var file = folder.resolve("preferences.json");
    Files.writeString(file, " ".repeat(2 << 20) + "{}");
    var preferences = Preferences.read(file, Runnable::run, failures::add);
    preferences.put("look", "sunlight");
    assertThat(Files.size(file)).isGreaterThan(2 << 20);
    assertThat(failures).hasSize(1);
  }
}
