package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.Templates;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DayCommandTest {
  private static final Duration LIMIT = Duration.ofMinutes(3);

  @TempDir private Path folder;
  private Instant now = Instant.parse("2026-11-23T09:00:00Z");
  private final Clock clock = ((InstantSource) () -> now).withZone(ZoneId.systemDefault());
  private Job job;

  @BeforeEach
  void aJobOfTwoSetups() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    job = ((Started.Opened) Job.start(Templates.fashionDays(), folder, values, clock)).job();
    job.importList(new ShotList(List.of(setup("001"), setup("002"))));
  }

  private static Setup setup(String code) {
    return new Setup(code, "Coat", List.of(), OptionalInt.empty(), new TreeMap<>());
  }

  private Ran day(String... options) {
    var words = new ArrayList<String>(List.of("day", job.folder().toString()));
    words.addAll(List.of(options));
    return assertTimeoutPreemptively(LIMIT, () -> Ran.run(words.toArray()));
  }

  @Test
  void saysWhyThereIsNoForecastYet() throws Exception {
    assertThat(day().out()).contains("All: 2 left; too early to tell");
    assertThat(day("--json").json().at("/all/noForecast").asText()).isEqualTo("too early to tell");
  }

  @Test
  void anEventDatedFarAheadCostsNoTime() throws Exception {
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    now = Instant.parse("8999-01-01T12:00:00Z");
    job.mark("001", SetupState.SHOT, MarkDetails.NONE);
    job.addSetup(new Setup("003", "Belt"), Optional.empty());
    var ran = day();
    assertThat(ran.status()).isZero();
    // A year of work for the first, so that nobody can say when the others will be done.
    assertThat(ran.out()).contains("2 left, 5856 h of work; no forecast beyond 366 days");
    assertThat(ran.err()).doesNotContain("Exception");
  }

  @Test
  void refusesHoursThatMakeNoSenseInWords() {
    for (var hours :
        List.of(
            "",
            "-",
            "09:00",
            "09:00-",
            "09:00-18:00-20:00",
            "25:00-26:00",
            "00:00-00:00",
            "18:00-02:00",
            "nine-six",
            "\u001b[31m-18:00",
            "9".repeat(100_000))) {
      var ran = day("--hours=" + hours);
      assertThat(ran.status()).as(hours).isEqualTo(2);
      assertThat(ran.err())
          .contains("Write times as in 09:00-18:00")
          .doesNotContain("Exception")
          .doesNotContain("\u001b")
          .hasSizeLessThan(400);
    }
  }

  @Test
  void tellsWhatAnotherOrderSaves() throws Exception {
    assertThat(day().out()).doesNotContain("Order:");
    assertThat(day("--json").json().get("order").isNull()).isTrue();
    job.importList(
        new ShotList(List.of(worn("001", "Mira"), worn("002", "Jonna"), worn("003", "Mira"))));
    assertThat(day().out())
        .contains(
            "Order: another order of what is left has 1 change in place of 2 changes; see:"
                + " framewright list JOB --propose-order");
    var order = day("--json").json().get("order");
    assertThat(order.get("changesNow").asInt()).isEqualTo(2);
    assertThat(order.get("changesThen").asInt()).isEqualTo(1);
    assertThat(order.get("savesMinutes").isNull()).isTrue();
  }

  private static Setup worn(String code, String model) {
    return new Setup(
        code, "Coat", List.of(), OptionalInt.empty(), new TreeMap<>(Map.of("Model", model)));
  }

  @Test
  void tellsHowFastTheDiskOfTheFramesFills() throws Exception {
    assertThat(day("--json").json().at("/speed/disks/0/hoursLeft").isNull()).isTrue();
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    for (int i = 0; i < 3; i++) {
      now = now.plus(Duration.ofMinutes(10));
      camera.take(Exposure.of(now, "001", "F")).writeTo(job.framesFolder());
      job.recordArrivals(job.scan());
    }
    assertThat(day().out()).containsPattern("Speed: 1 MB came in 20 min until .*lasts more than 9");
    var disk = day("--json").json().at("/speed/disks/0");
    assertThat(disk.get("use").asText()).isEqualTo("frames");
    assertThat(disk.get("hoursLeft").asDouble()).isPositive();
  }

  @Test
  void refusesBreaksThatMakeNoSenseInWords() {
    for (var pause : List.of("08:00-19:00", "14:00-13:00", "13:00", "lunch")) {
      assertThat(day("--break", pause).status()).as(pause).isEqualTo(2);
    }
    assertThat(day("--break", "12:00-13:00", "--break", "12:30-14:00").status()).isEqualTo(2);
    assertThat(day("--break", "08:00-19:00").err()).contains("leave no time to work");
  }

  @Test
  void shortHoursNeedNoWordAboutTheUsualBreak() {
    assertThat(day("--hours", "13:00-14:00").status()).isZero();
    assertThat(day("--hours", "13:15-13:45").status()).isZero();
    assertThat(day("--hours", "22:00-23:59").status()).isZero();
  }

  @Test
  void tellsTheCommentsOfTheDayWithWhoAndWhen() throws Exception {
    now = Instant.now().minus(Duration.ofDays(1));
    job.comment("001", List.of(), "yesterday's", "Ada");
    now = Instant.now();
    job.comment("002", List.of(), "collar lower", "Ada");
    assertThat(day().out())
        .contains("Comment on 002, by Ada at ")
        .contains(": collar lower")
        .doesNotContain("yesterday's");
    var comments = day("--json").json().path("comments");
    assertThat(comments.findValuesAsText("text")).containsExactly("yesterday's", "collar lower");
    var listed = Ran.run("list", job.folder(), "--json").json();
    assertThat(listed.at("/1/comments/0/text").asText()).isEqualTo("collar lower");
    assertThat(listed.at("/1/comments/0/by").asText()).isEqualTo("Ada");
  }
}
