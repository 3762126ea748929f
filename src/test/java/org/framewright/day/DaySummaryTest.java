package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.framewright.Templates;
import org.framewright.base.Text;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DaySummaryTest {
  private static final DayHours HOURS = DayHours.usual(ZoneOffset.UTC);

  @TempDir private Path folder;
  private Instant now = Instant.parse("2026-11-02T09:00:00Z");
  private Job job;

  /** Twelve setups, six a day; two frames of front and back are wanted of each. */
  @BeforeEach
  void startAJob() throws Exception {
    var started =
        Job.start(
            Templates.fashionDays(),
            folder,
            Map.of("day", "2026-11-02", "client", "KVO", "title", "look book"),
            ((InstantSource) () -> now).withZone(ZoneOffset.UTC));
    job = ((Started.Opened) started).job();
    var setups = new ArrayList<Setup>();
    for (int i = 1; i <= 12; i++) {
      var columns = new LinkedHashMap<String, String>();
      columns.put("Day", i <= 6 ? "2026-11-02" : "2026-11-03");
      setups.add(
          new Setup(
              String.format("%03d", i),
              "Garment",
              List.of(new View("F"), new View("B")),
              OptionalInt.of(4),
              columns));
    }
    job.importList(new ShotList(setups));
  }

  private void shoot(String setup, int minutes) throws Exception {
    job.mark(setup, SetupState.ON_SET, MarkDetails.NONE);
    now = now.plus(Duration.ofMinutes(minutes));
    job.mark(setup, SetupState.SHOT, MarkDetails.NONE);
  }

  private DaySummary summary() throws Exception {
    var scan = job.scan();
    return DaySummary.of(job, scan, job.standing(scan), HOURS);
  }

  private static Duration minutes(int minutes) {
    return Duration.ofMinutes(minutes);
  }

  @Test
  void aSetupTakesUntilTheNextOneComesOnSet() throws Exception {
    shoot("001", 9);
    now = now.plus(minutes(2));
    shoot("002", 8);
    assertThat(summary().pace().times()).containsExactly(minutes(11), minutes(8));
  }

  @Test
  void lunchAndTheNightAreNoPartOfASetup() throws Exception {
    now = Instant.parse("2026-11-02T12:50:00Z");
    shoot("001", 90);
    now = Instant.parse("2026-11-03T09:00:00Z");
    shoot("002", 8);
    assertThat(summary().pace().times()).containsExactly(minutes(30), minutes(8));
  }

  // The eight times and the result are the worked example computed by hand in PaceTest.
  @Test
  void forecastsTheRestOfTheDayAndOfTheJobFromEightSetups() throws Exception {
    int[] times = {9, 11, 8, 14, 10, 12, 9, 11};
    for (int i = 0; i < times.length; i++) {
      shoot(String.format("%03d", i + 1), times[i]);
    }
    var summary = summary();
    assertThat(summary.pace().mean()).contains(Duration.ofSeconds(630));
    assertThat(summary.all().setups()).isEqualTo(4);
    // Worked by hand: the mean of the times with weights 0.9 to the power of 7 to 0 is 10.5648.
    assertThat(summary.all().work()).contains(Duration.ofMillis(2_535_545));
    // 9:00 and 84 minutes of shooting, then as much more.
    assertThat(summary.all().finish()).contains(Instant.parse("2026-11-02T11:06:15.545Z"));
    assertThat(summary.all().earliest().orElseThrow()).isBefore(summary.all().finish().get());
    assertThat(summary.all().latest().orElseThrow()).isAfter(summary.all().finish().get());
    // All that the list plans for today is done.
    assertThat(summary.today().orElseThrow().setups()).isZero();
  }

  // Twelve minutes for four frames are three for each.
  @Test
  void aSetupOfMoreFramesWillTakeLonger() throws Exception {
    assertThat(SetupTimes.of(job, job.state(), HOURS).bySetup()).isEmpty();
    importSetups(8, "101");
    importSetups(1, "102");
    shoot("001", 12);
    shoot("002", 12);
    var times = SetupTimes.of(job, job.state(), HOURS);
    assertThat(times.bySetup())
        .doesNotContainKey("001")
        .containsEntry("003", minutes(12))
        .containsEntry("101", minutes(24))
        .containsEntry("102", minutes(3));
  }

  @Test
  void aDroppedSetupLeavesTheForecastAndAPickupStaysInIt() throws Exception {
    shoot("001", 10);
    job.mark("002", SetupState.DROPPED, MarkDetails.NONE.andReason("not delivered"));
    job.mark("001", SetupState.PICKUP, MarkDetails.NONE.andReason("creased"));
    var summary = summary();
    assertThat(summary.all().setups()).isEqualTo(11);
    assertThat(summary.today().orElseThrow().setups()).isEqualTo(5);
    assertThat(summary.pace().times()).isEmpty();
    assertThat(summary.attention())
        .extracting(Text::english)
        .containsExactly("001 is to be shot again: creased", "002 was dropped: not delivered");
  }

  private void importSetups(int wanted, String... codes) throws Exception {
    var setups = new ArrayList<>(job.shotList().setups());
    for (var code : codes) {
      setups.add(
          new Setup(
              code,
              "Garment",
              List.of(),
              wanted > 0 ? OptionalInt.of(wanted) : OptionalInt.empty(),
              new LinkedHashMap<>()));
    }
    job.importList(new ShotList(setups));
  }

  private void shootFrames(SampleCamera camera, String setup, int frames, SetupState then)
      throws Exception {
    job.mark(setup, SetupState.ON_SET, MarkDetails.NONE);
    for (int i = 0; i < frames; i++) {
      now = now.plusSeconds(1);
      camera.take(Exposure.of(now, setup, "F")).writeTo(job.framesFolder());
    }
    job.recordArrivals(job.scan());
    now = now.plusSeconds(60);
    job.mark(setup, then, MarkDetails.NONE);
  }

  private static SampleCamera camera() {
    return new SampleCamera(
        SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
  }

  @Test
  void plansTheMeanOfTheOthersForASetupWithoutANumber() throws Exception {
    importSetups(0, "101", "102");
    var camera = camera();
    shootFrames(camera, "001", 5, SetupState.SHOT);
    shootFrames(camera, "002", 1, SetupState.PICKUP);
    shootFrames(camera, "101", 3, SetupState.PICKUP);
    // Three setups have 3 frames in the mean: none is missing of 101, three are of 102; of 002
    // three
    // are missing, and four of each of the other ten.
    assertThat(summary().space().planned()).hasValue(3 + 3 + 10 * 4);
    shootFrames(camera, "003", 7, SetupState.SHOT);
    // 4 in the mean: one is missing of 101, four of 102.
    assertThat(summary().space().planned()).hasValue(1 + 4 + 3 + 9 * 4);
  }

  @Test
  void plansNoFrameOfASetupThatHasMoreThanItsNumber() throws Exception {
    shootFrames(camera(), "001", 6, SetupState.PICKUP);
    assertThat(summary().space().planned()).hasValue(11 * 4);
  }

  @Test
  void cannotSayHowManyFramesAreToComeWhereNothingWasShotToJudgeBy() throws Exception {
    importSetups(0, "101");
    assertThat(summary().space().planned()).isEmpty();
    importSetups(3, "102");
    shootFrames(camera(), "001", 2, SetupState.SHOT);
    assertThat(summary().space().planned()).hasValue(2 + 3 + 11 * 4);
  }

  @Test
  void measuresTheSpaceThatIsNeededOnTheJobsOwnFrames() throws Exception {
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    long bytes = 0;
    for (int i = 0; i < 2; i++) {
      now = now.plusSeconds(1);
      var frame = camera.take(Exposure.of(now, "001", "F"));
      frame.writeTo(job.framesFolder());
      bytes += frame.files().values().stream().mapToLong(file -> file.length).sum();
    }
    job.recordArrivals(job.scan());
    now = now.plusSeconds(60);
    job.mark("001", SetupState.SHOT, MarkDetails.NONE);
    var summary = summary();
    assertThat(summary.space().used()).isEqualTo(bytes);
    assertThat(summary.space().planned()).hasValue(11 * 4);
    assertThat(summary.space().needed()).hasValue(44 * Math.ceilDiv(bytes, 2));
    assertThat(summary.attention())
        .extracting(Text::english)
        .containsExactly("001 has no frame of the view back");
  }
}
