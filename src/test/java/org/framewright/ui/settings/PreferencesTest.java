package org.framewright.ui.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PreferencesTest {
  @TempDir private Path folder;

  private Preferences read() throws IOException {
    return Preferences.read(folder.resolve("habits/preferences.json"), Runnable::run);
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
    var preferences = Preferences.read(file, Runnable::run);
    assertThat(preferences.get("look")).isEmpty();
    assertThat(folder.resolve("preferences.json.unreadable")).hasContent("{ torn");
  }

  @Test
  void writesNothingWhileNothingChanges() throws IOException {
    var writes = new ArrayList<Runnable>();
    var preferences = Preferences.read(folder.resolve("p.json"), writes::add);
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
    assertThat(Places.usual("Linux", home, Map.of()).preferences())
        .isEqualTo(home.resolve(".config/framewright/preferences.json"));
    assertThat(Places.usual("Linux", home, Map.of("XDG_CONFIG_HOME", "/conf")).preferences())
        .isEqualTo(Path.of("/conf/framewright/preferences.json"));
    assertThat(Places.usual("Linux", home, Map.of("XDG_CONFIG_HOME", "conf")).preferences())
        .isEqualTo(home.resolve(".config/framewright/preferences.json"));
    assertThat(Places.usual("Mac OS X", home, Map.of()).log())
        .isEqualTo(home.resolve("Library/Application Support/Framewright/framewright.log"));
  }
}
