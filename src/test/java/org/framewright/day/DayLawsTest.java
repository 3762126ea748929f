package org.framewright.day;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Whatever hours, events and moments come, the day is reckoned to an answer. */
class DayLawsTest {
  /** Many thousand times what one takes. */
  private static final Duration LIMIT = Duration.ofMinutes(2);

  /** Zones with and without summer time, at the ends of the day, and one that left a day out. */
  @Provide
  Arbitrary<ZoneId> zones() {
    return Arbitraries.of(
            "UTC",
            "Europe/Berlin",
            "America/New_York",
            "Australia/Lord_Howe",
            "Pacific/Apia",
            "Pacific/Kiritimati",
            "+18:00",
            "-18:00")
        .map(ZoneId::of);
  }

  @Provide
  Arbitrary<Instant> instants() {
    return Arbitraries.oneOf(
        Arbitraries.of(Instant.MIN, Instant.EPOCH, Instant.MAX),
        Arbitraries.longs()
            .between(Instant.MIN.getEpochSecond(), Instant.MAX.getEpochSecond())
            .map(Instant::ofEpochSecond),
        Arbitraries.longs().between(1_700_000_000L, 1_900_000_000L).map(Instant::ofEpochSecond));
  }

  @Provide
  Arbitrary<List<LocalTime>> times() {
    return Arbitraries.integers()
        .between(0, 24 * 60 - 1)
        .map(minute -> LocalTime.ofSecondOfDay(minute * 60L))
        .list()
        .ofMinSize(2)
        .ofMaxSize(10);
  }

  @Provide
  Arbitrary<Pace> paces() {
    return Arbitraries.oneOf(
            Arbitraries.longs().between(0, 100_000),
            Arbitraries.of(Long.MAX_VALUE, Long.MAX_VALUE / 2, 366L * 24 * 3600))
        .map(Duration::ofSeconds)
        .list()
        .ofMaxSize(12)
        .map(Pace::new);
  }

  @Property(tries = 500)
  void everyDayIsPutIntoWords(
      @ForAll("times") List<LocalTime> times,
      @ForAll("zones") ZoneId zone,
      @ForAll("instants") Instant now,
      @ForAll("paces") Pace pace,
      @ForAll @IntRange(max = 60_000) int setups) {
    var hours = hours(times, zone);
    if (hours.isEmpty()) {
      return;
    }
    assertTimeoutPreemptively(
        LIMIT,
        () -> {
          var forecast = Forecast.of(setups, pace, hours.get(), now);
          assertThat(
                  forecast.finish().isPresent() || forecast.noForecast().isPresent() || setups == 0)
              .isTrue();
          forecast
              .finish()
              .ifPresent(end -> assertThat(end).isAfterOrEqualTo(DayHours.within(now)));
          var summary =
              new DaySummary(
                  DayHours.within(now),
                  hours.get(),
                  new LinkedHashMap<>(),
                  setups,
                  0,
                  pace,
                  Optional.of(Forecast.of(setups / 2, pace, hours.get(), now)),
                  forecast,
                  List.of(),
                  new Space(Long.MAX_VALUE, 1, OptionalLong.of(setups), 0),
                  List.of());
          assertThat(DayDescription.lines(summary)).isNotEmpty();
        });
  }

  @Property(tries = 500)
  void noStretchHasMoreWorkThanTimeOrThanAYear(
      @ForAll("times") List<LocalTime> times,
      @ForAll("zones") ZoneId zone,
      @ForAll("instants") Instant begin,
      @ForAll("instants") Instant end) {
    var hours = hours(times, zone);
    if (hours.isEmpty()) {
      return;
    }
    var work = assertTimeoutPreemptively(LIMIT, () -> hours.get().between(begin, end));
    assertThat(work).isGreaterThanOrEqualTo(Duration.ZERO);
    assertThat(work).isLessThanOrEqualTo(Duration.ofHours(25L * DayHours.MOST_DAYS));
    if (begin.isBefore(end)) {
      assertThat(work).isLessThanOrEqualTo(Duration.between(begin, end));
    } else {
      assertThat(work).isZero();
    }
  }

  @Property(tries = 500)
  void workTakesItsTimeInEveryZone(
      @ForAll("times") List<LocalTime> times,
      @ForAll("zones") ZoneId zone,
      @ForAll @IntRange(max = 500_000) int minute,
      @ForAll @IntRange(max = 5_000) int minutes) {
    var hours = hours(times, zone);
    if (hours.isEmpty()) {
      return;
    }
    var begin = Instant.parse("2011-12-01T00:00:00Z").plus(Duration.ofMinutes(minute));
    var work = Duration.ofMinutes(minutes);
    hours
        .get()
        .after(begin, work)
        .ifPresent(end -> assertThat(hours.get().between(begin, end)).isEqualTo(work));
  }

  /** Hours of two times and breaks of the others; refused ones say why in words. */
  private static Optional<DayHours> hours(List<LocalTime> times, ZoneId zone) {
    try {
      var breaks = new ArrayList<DayHours.Break>();
      for (int i = 2; i + 1 < times.size(); i += 2) {
        breaks.add(new DayHours.Break(times.get(i), times.get(i + 1)));
      }
      return Optional.of(new DayHours(times.get(0), times.get(1), breaks, zone));
    } catch (IllegalArgumentException e) {
      assertThat(e).hasMessageMatching("(A day|A break|Two breaks|The breaks) .*");
      return Optional.empty();
    }
  }
}
