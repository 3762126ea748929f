package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.framewright.Templates;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The hours of work that commands reckon with: those given, else those that are set. */
@Isolated("It sets where this computer keeps its settings.")
class HoursOptionsTest {
  private static final String SETTINGS = "framewright.settings";

  @TempDir private Path folder;
  private final String before = System.getProperty(SETTINGS);
  private Path preferences;
  private Path job;

  /** One setup, from five in the morning to five in the afternoon of a day long ago. */
  @BeforeEach
  void aJob() throws Exception {
    preferences = Files.createDirectory(folder.resolve("settings")).resolve("preferences.json");
    System.setProperty(SETTINGS, preferences.getParent().toString());
    var zone = ZoneId.systemDefault();
    var now = new Instant[] {Instant.parse("2024-01-10T00:00:00Z")};
    Clock clock = ((InstantSource) () -> now[0]).withZone(zone);
    var values = Map.of("day", "2024-01-10", "client", "KVO", "title", "look book");
    var started =
        ((Started.Opened) Job.start(Templates.fashionDays(), folder, values, clock)).job();
    started.importList(new ShotList(List.of(new Setup("001", "Coat"), new Setup("002", "Hat"))));
    now[0] = java.time.LocalDateTime.parse("2024-01-10T05:00:00").atZone(zone).toInstant();
    started.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    now[0] = java.time.LocalDateTime.parse("2024-01-10T17:00:00").atZone(zone).toInstant();
    started.mark("001", SetupState.SHOT, MarkDetails.NONE);
    job = started.folder();
  }

  @AfterEach
  void asItWas() {
    if (before == null) {
      System.clearProperty(SETTINGS);
    } else {
      System.setProperty(SETTINGS, before);
    }
  }

  private static double minutes(Ran ran) throws IOException {
    return ran.json().at("/pace/meanMinutes").asDouble();
  }

  // Nine to five less an hour; six to five less half an hour; eight to five less an hour.
  @Test
  void thoseThatAreSetHoldUnlessOthersAreGiven() throws IOException {
    assertThat(minutes(Ran.run("day", job, "--json"))).isEqualTo(7 * 60);
    Files.writeString(
        preferences, "{\"hours\":\"06:00-18:00\",\"hours.breaks\":[\"12:00-12:30\"]}");
    assertThat(minutes(Ran.run("day", job, "--json"))).isEqualTo(10.5 * 60);
    assertThat(minutes(Ran.run("day", job, "--json", "--hours", "08:00-20:00"))).isEqualTo(8 * 60);
    assertThat(minutes(Ran.run("day", job, "--json", "--break", "11:00-13:00"))).isEqualTo(9 * 60);
  }

  @Test
  void whatIsSetAndCannotBeUsedIsToldAndTheUsualHoursHold() throws IOException {
    Files.writeString(preferences, "{\"hours\":\"always\"}");
    var ran = Ran.run("day", job, "--json");
    assertThat(ran.status()).isZero();
    assertThat(minutes(ran)).isEqualTo(7 * 60);
    assertThat(ran.err())
        .contains("preferences.json")
        .contains("reckoned with 09:00-18:00")
        .doesNotContain("Exception");
  }
}
