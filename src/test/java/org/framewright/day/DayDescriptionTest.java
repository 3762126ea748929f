package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.framewright.base.Text;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Test;

class DayDescriptionTest {
  private static final DayHours HOURS = DayHours.usual(ZoneOffset.UTC);
  private static final Instant NOON = Instant.parse("2026-11-23T12:00:00Z");
  private static final long GB = 1_000_000_000L;

  private Instant now = NOON;
  private Pace pace = pace(30, 30, 30, 30, 30);
  private Optional<Integer> today = Optional.empty();
  private int left = 2;
  private int unassigned;
  private Space space = new Space(3 * GB, 50, OptionalLong.of(100), 500 * GB);
  private List<KindPace> kinds = List.of();
  private List<Text> attention = List.of();

  private static Pace pace(long... minutes) {
    return new Pace(Arrays.stream(minutes).mapToObj(Duration::ofMinutes).toList());
  }

  private List<String> lines() {
    var setups = new LinkedHashMap<SetupState, Integer>();
    setups.put(SetupState.TO_SHOOT, 2);
    setups.put(SetupState.SHOT, 5);
    return DayDescription.lines(
        new DaySummary(
            now,
            HOURS,
            setups,
            50,
            unassigned,
            pace,
            today.map(count -> Forecast.of(count, pace, HOURS, now)),
            Forecast.of(left, pace, HOURS, now),
            kinds,
            space,
            attention));
  }

  @Test
  void saysStatesFramesPaceForecastAndSpace() {
    assertThat(lines())
        .containsExactly(
            "2026-11-23 12:00  2 %s, 5 %s"
                .formatted(SetupState.TO_SHOOT.label(), SetupState.SHOT.label()),
            "50 frames, 3.0 GB",
            "Pace: 30 min a setup over 5, lately 30 min",
            "All: 2 left, 60 min of work; done at 13:00; to be done today, 2 h 30 min each",
            "Space: 500.0 GB free; the 100 frames still planned need about 6.0 GB",
            "Each frame 8 s longer: 13 min more for the 100 that are still planned");
  }

  @Test
  void saysWhatEachKindCostsWhereThereAreSeveral() {
    kinds = List.of(new KindPace("coat", 0, Optional.empty(), 4));
    assertThat(lines()).noneMatch(line -> line.startsWith("Kinds"));
    kinds =
        List.of(
            new KindPace("coat", 0, Optional.empty(), 4),
            new KindPace("shirt", 3, Optional.of(Duration.ofMinutes(12)), 0));
    assertThat(lines()).contains("Kinds: coat not shot yet, 4 left; shirt 12 min a setup over 3");
  }

  @Test
  void saysTodayWhereItIsNotAll() {
    today = Optional.of(2);
    assertThat(lines()).noneMatch(line -> line.startsWith("Today"));
    today = Optional.of(1);
    assertThat(lines()).anyMatch(line -> line.startsWith("Today: 1 left, 30 min of work"));
    today = Optional.of(0);
    assertThat(lines()).contains("Today: nothing is left to shoot");
  }

  @Test
  void aFinishOnAnotherDayHasItsDateAndWorkIsSaidInHours() {
    left = 20;
    assertThat(lines())
        .anyMatch(line -> line.startsWith("All: 20 left, 10 h of work; done at 2026-11-24 15:00"));
  }

  @Test
  void saysWhyThereIsNoForecast() {
    pace = pace();
    assertThat(lines()).contains("Pace: too early to tell", "All: 2 left; too early to tell");
    pace = pace(480);
    left = 1000;
    assertThat(lines())
        .anyMatch(
            line ->
                line.startsWith("All: 1000 left, 8000 h of work; no forecast beyond 366 days; to"));
  }

  @Test
  void setupsThatTookNoTimeMakeNoPace() {
    pace = pace(0, 0, 0, 0, 0, 0);
    assertThat(lines())
        .contains(
            "Pace: too early to tell; what was shot took next to no time between 09:00 and 18:00",
            "All: 2 left; too early to tell");
  }

  @Test
  void aPaceOfLessThanTwoMinutesIsPutInSeconds() {
    pace = new Pace(java.util.Collections.nCopies(6, Duration.ofSeconds(40)));
    assertThat(lines())
        .contains("Pace: 40 s a setup over 6, lately 40 s")
        .anyMatch(line -> line.startsWith("All: 2 left, 80 s of work; done at 12:01"));
  }

  @Test
  void aRangeThatHasNoEndIsNotSaid() {
    pace = pace(1, 1, 1, 1, 1500);
    left = 400;
    var all = lines().stream().filter(line -> line.startsWith("All")).findFirst().orElseThrow();
    assertThat(all).contains("done at").doesNotContain("between");
  }

  @Test
  void saysWhatNeedsAPerson() {
    unassigned = 3;
    space = new Space(3 * GB, 50, OptionalLong.of(100), GB / 2);
    attention = List.of(Text.of("{0} has no frame of the view {1}", "001", "back"));
    assertThat(lines())
        .contains(
            "50 frames, 3.0 GB; 3 belong to no setup",
            "Space: 500 MB free; the 100 frames still planned need about 6.0 GB: NOT ENOUGH, make"
                + " room now",
            "Look at: 001 has no frame of the view back");
    space = new Space(1, 1, OptionalLong.empty(), GB);
    assertThat(lines()).contains("Space: 1.0 GB free", "50 frames, 1 MB; 3 belong to no setup");
  }

  @Test
  void saysNoTimeForEachSetupOnceTheDayIsOver() {
    now = NOON.plus(Duration.ofHours(9));
    var all = lines().stream().filter(line -> line.startsWith("All")).findFirst().orElseThrow();
    assertThat(all).contains("2 left, 60 min of work").doesNotContain("each");
  }

  @Test
  void putsSizesInMegabytesBelowAGigabyte() {
    space = new Space(GB - 1, 1, OptionalLong.empty(), GB);
    assertThat(lines()).contains("50 frames, 1000 MB", "Space: 1.0 GB free");
  }
}
