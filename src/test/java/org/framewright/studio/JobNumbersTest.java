package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.TestClock;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two days of one job: 001 and 002 are done on the first, 003 is dropped, 004 is for the second.
 */
class JobNumbersTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 11, 23);
  private static final LocalDate TUESDAY = LocalDate.of(2026, 11, 24);

  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T08:00:00Z");
  private final DayHours hours = DayHours.usual(ZoneOffset.UTC);
  private Job job;

  @BeforeEach
  void twoDays() throws Exception {
    job = SetScene.job(root, "Winter", 4, clock, "desk");
    mark("2026-11-23T09:10:00Z", "001", SetupState.ON_SET);
    mark("2026-11-23T09:20:00Z", "001", SetupState.SHOT);
    mark("2026-11-23T09:32:00Z", "001", SetupState.SIGNED_OFF);
    mark("2026-11-23T09:40:00Z", "002", SetupState.ON_SET);
    mark("2026-11-23T10:00:00Z", "002", SetupState.SHOT);
    mark("2026-11-23T10:30:00Z", "003", SetupState.DROPPED);
    mark("2026-11-24T09:15:00Z", "002", SetupState.SIGNED_OFF);
    mark("2026-11-24T09:20:00Z", "004", SetupState.ON_SET);
    mark("2026-11-24T09:30:00Z", "004", SetupState.SHOT);
    mark("2026-11-24T09:40:00Z", "004", SetupState.PICKUP);
  }

  private void mark(String at, String setup, SetupState state) throws Exception {
    clock.set(at);
    job.mark(setup, state, MarkDetails.by("Odette"));
  }

  private JobNumbers numbers() throws Exception {
    var scan = job.scan();
    return JobNumbers.of(job, scan, job.standing(scan), hours);
  }

  /** Hours of work are from 9 to 18, with a break from 13 to 14. */
  @Test
  void eachSetupCountsOnTheDayOnWhichSomethingCameOfIt() throws Exception {
    assertThat(numbers().setups())
        .isEqualTo(
            Map.of(
                MONDAY,
                new SetupNumbers(
                    OptionalInt.of(3),
                    2,
                    1,
                    0,
                    1,
                    List.of(Duration.ofMinutes(30), Duration.ofMinutes(20)),
                    List.of(Duration.ofMinutes(12))),
                TUESDAY,
                new SetupNumbers(
                    OptionalInt.empty(),
                    0,
                    1,
                    1,
                    0,
                    List.of(),
                    List.of(Duration.ofHours(7).plusMinutes(15)))));
  }

  @Test
  void aWaitBeginsWithTheLastTickThatASetupIsShot() throws Exception {
    mark("2026-11-24T10:00:00Z", "002", SetupState.ON_SET);
    mark("2026-11-24T10:10:00Z", "002", SetupState.SIGNED_OFF);
    mark("2026-11-24T10:20:00Z", "004", SetupState.ON_SET);
    mark("2026-11-24T10:30:00Z", "004", SetupState.SHOT);
    mark("2026-11-24T10:35:00Z", "004", SetupState.SIGNED_OFF);
    var tuesday = numbers().setups().get(TUESDAY);
    assertThat(tuesday.done()).isEqualTo(2);
    assertThat(tuesday.waits()).containsExactly(Duration.ofMinutes(5));
  }

  @Test
  void setupsArePlannedForTheDaysThatTheListHas() throws Exception {
    job.importList(
        new ShotList(
            List.of(
                planned("001", "2026-11-23"),
                planned("002", "2026-11-23"),
                planned("003", "2026-11-24"),
                planned("004", "2026-11-24"),
                planned("005", "+999999999-12-31"),
                planned("006", ""))));
    var planned = new LinkedHashMap<LocalDate, OptionalInt>();
    numbers().setups().forEach((day, its) -> planned.put(day, its.planned()));
    assertThat(planned)
        .isEqualTo(
            Map.of(
                MONDAY,
                OptionalInt.of(2),
                TUESDAY,
                OptionalInt.of(1),
                JobNumbers.NO_DAY,
                OptionalInt.of(2)));
  }

  private static Setup planned(String code, String day) {
    return new Setup(
        code,
        "Garment",
        List.of(),
        OptionalInt.empty(),
        new LinkedHashMap<>(day.isEmpty() ? Map.of() : Map.of("Day", day)));
  }

  @Test
  void whatNobodyBeganIsOfNoDay() throws Exception {
    var other = SetScene.job(root, "Summer", 5, clock, "desk");
    var scan = other.scan();
    var numbers = JobNumbers.of(other, scan, other.standing(scan), hours);
    assertThat(numbers.setups()).isEqualTo(Map.of(JobNumbers.NO_DAY, SetupNumbers.ofPlanned(5)));
    assertThat(numbers.frames()).isEmpty();
  }

  @Test
  void framesCountOnTheDayOnWhichTheyWereTaken() throws Exception {
    take("2026-11-23T09:12:00Z", 1);
    take("2026-11-23T09:18:00Z", 2);
    take("2026-11-24T09:25:00Z", 3);
    assertThat(numbers().frames().get(MONDAY))
        .isEqualTo(
            new FrameNumbers(
                2,
                OptionalInt.empty(),
                Optional.of(LocalDateTime.parse("2026-11-23T09:12:00")),
                Optional.of(LocalDateTime.parse("2026-11-23T09:18:00"))));
    var second = job.inOrder(job.scan()).get(1);
    job.select(List.of(second.id()), true, "Odette");
    assertThat(numbers().frames().get(MONDAY).selects()).hasValue(1);
    assertThat(numbers().frames().get(TUESDAY).selects()).hasValue(0);
  }

  private void take(String at, int number) throws Exception {
    clock.set(at);
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, number);
    camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(job.framesFolder());
  }

  @Test
  void allDaysTogetherAreHowTheJobStands() throws Exception {
    take("2026-11-23T09:12:00Z", 1);
    take("2026-11-24T09:25:00Z", 3);
    clock.set("2026-11-24T12:00:00Z");
    var scan = job.scan();
    var standing = job.standing(scan);
    var day = DaySummary.of(job, scan, standing, hours);
    var numbers = JobNumbers.of(job, scan, standing, hours);
    var setups = SetupNumbers.sum(List.copyOf(numbers.setups().values()));
    int signedOff = day.setups().getOrDefault(SetupState.SIGNED_OFF, 0);
    assertThat(setups.signedOff()).isEqualTo(signedOff).isEqualTo(2);
    assertThat(setups.done()).isEqualTo(signedOff + day.setups().getOrDefault(SetupState.SHOT, 0));
    assertThat(setups.pickups()).isEqualTo(day.setups().get(SetupState.PICKUP));
    assertThat(setups.dropped()).isEqualTo(day.setups().get(SetupState.DROPPED));
    assertThat(setups.planned()).hasValue(3);
    assertThat(setups.onSet()).isEqualTo(day.pace().times());
    assertThat(numbers.frames().values().stream().mapToInt(FrameNumbers::frames).sum())
        .isEqualTo(day.frames())
        .isEqualTo(2);
  }
}
