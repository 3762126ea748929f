package org.framewright.day;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class DayHoursTest {
  private static final DayHours USUAL = DayHours.usual(ZoneOffset.UTC);

  private static Instant on(int day, String time) {
    return Instant.parse("2026-11-" + day + "T" + time + ":00Z");
  }

  // Common practice, no source.
  @Test
  void aUsualDayHas480MinutesOfWork() {
    assertThat(USUAL.length()).isEqualTo(Duration.ofHours(8));
  }

  @Test
  void breaksAndNightsAreNotWorked() {
    assertThat(USUAL.between(on(23, "12:30"), on(23, "14:30"))).isEqualTo(Duration.ofHours(1));
    assertThat(USUAL.between(on(23, "17:00"), on(24, "10:00"))).isEqualTo(Duration.ofHours(2));
    assertThat(USUAL.between(on(23, "19:00"), on(23, "20:00"))).isEqualTo(Duration.ZERO);
    assertThat(USUAL.between(on(24, "10:00"), on(23, "10:00"))).isEqualTo(Duration.ZERO);
  }

  @Test
  void workThatDoesNotFitTodayEndsTomorrow() {
    assertThat(USUAL.after(on(23, "12:30"), Duration.ofHours(1))).contains(on(23, "14:30"));
    assertThat(USUAL.after(on(23, "17:00"), Duration.ofHours(2))).contains(on(24, "10:00"));
    assertThat(USUAL.after(on(23, "07:00"), Duration.ofHours(1))).contains(on(23, "10:00"));
  }

  @Test
  void theHourThatSummerTimeTakesIsNotMissed() {
    // Clocks went forward at 2:00 on 29 March 2026 in this zone (IANA time zone database).
    var hours = DayHours.usual(ZoneId.of("Europe/Berlin"));
    assertThat(
            hours.between(
                Instant.parse("2026-03-29T07:00:00Z"), Instant.parse("2026-03-29T16:00:00Z")))
        .isEqualTo(Duration.ofHours(8));
  }

  @Property(tries = 300)
  void workingForATimeTakesThatTime(
      @ForAll @IntRange(max = 20_000) int begin, @ForAll @IntRange(max = 6_000) int minutes) {
    var from = on(23, "00:00").plus(Duration.ofMinutes(begin));
    var work = Duration.ofMinutes(minutes);
    assertThat(USUAL.between(from, USUAL.after(from, work).orElseThrow())).isEqualTo(work);
  }

  @Test
  void refusesBreaksThatOverlap() {
    var one = new DayHours.Break(LocalTime.of(12, 0), LocalTime.of(13, 0));
    var other = new DayHours.Break(LocalTime.of(12, 30), LocalTime.of(13, 30));
    assertThatThrownBy(
            () ->
                new DayHours(
                    LocalTime.of(9, 0), LocalTime.of(18, 0), List.of(one, other), ZoneOffset.UTC))
        .hasMessageContaining("overlap");
  }

  @Test
  void aBreakMayBeginWhenAnotherEnds() {
    assertThat(hours("09:00", "18:00", "12:00-13:00", "13:00-14:00").length())
        .isEqualTo(Duration.ofHours(7));
  }

  @Test
  void refusesADayThatDoesNotEndAfterItBegins() {
    for (var until : List.of("00:00", "09:00")) {
      assertThatThrownBy(() -> hours("09:00", until))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("A day ends after it begins: 09:00-" + until);
    }
    assertThatThrownBy(() -> hours("00:00", "00:00")).hasMessageContaining("00:00-00:00");
    assertThatThrownBy(() -> hours("09:00", "18:00", "13:00-13:00"))
        .hasMessage("A break ends after it begins: 13:00-13:00");
  }

  @Test
  void refusesBreaksThatLeaveNoTimeToWork() {
    assertThatThrownBy(() -> hours("09:00", "18:00", "08:00-19:00"))
        .hasMessage("The breaks leave no time to work between 09:00 and 18:00");
    assertThatThrownBy(() -> hours("09:00", "18:00", "09:00-12:00", "12:00-18:00"))
        .hasMessageContaining("no time to work");
  }

  @Test
  void breaksAtTheEdgesAndOutsideOfTheDayCountForWhatLiesInIt() {
    assertThat(hours("09:00", "18:00", "08:00-10:00").length()).isEqualTo(Duration.ofHours(8));
    assertThat(hours("09:00", "18:00", "17:00-20:00").length()).isEqualTo(Duration.ofHours(8));
    assertThat(hours("09:00", "18:00", "08:00-09:00").length()).isEqualTo(Duration.ofHours(9));
    assertThat(hours("09:00", "18:00", "18:00-19:00").length()).isEqualTo(Duration.ofHours(9));
    assertThat(hours("09:00", "18:00", "19:00-20:00").length()).isEqualTo(Duration.ofHours(9));
  }

  @Test
  void workThatFillsADayEndsWithTheDay() {
    assertThat(USUAL.after(on(23, "09:00"), Duration.ofHours(8))).contains(on(23, "18:00"));
    assertThat(USUAL.after(on(23, "18:00"), Duration.ofMinutes(1))).contains(on(24, "09:01"));
    assertThat(USUAL.after(on(23, "09:00"), Duration.ZERO)).contains(on(23, "09:00"));
  }

  @Test
  void aYearOfWorkHasAnEndAndAMinuteMoreHasNone() {
    var year = USUAL.length().multipliedBy(DayHours.MOST_DAYS);
    // 366 days from 23 November 2026, that one counted in.
    assertThat(USUAL.after(on(23, "09:00"), year)).contains(Instant.parse("2027-11-23T18:00:00Z"));
    assertThat(USUAL.after(on(23, "09:00"), year.plusMinutes(1))).isEmpty();
  }

  @Test
  void ofAStretchOfManyYearsTheFirstIsCounted() {
    var far = Instant.parse("8999-01-01T00:00:00Z");
    assertThat(USUAL.between(on(23, "00:00"), far))
        .isEqualTo(USUAL.length().multipliedBy(DayHours.MOST_DAYS));
    assertThat(USUAL.between(Instant.MIN, Instant.MAX))
        .isEqualTo(USUAL.length().multipliedBy(DayHours.MOST_DAYS));
    assertThat(USUAL.between(Instant.MAX, Instant.MIN)).isZero();
  }

  @Test
  void aTimeThatNoCalendarHoldsBecomesTheNearestThatOneDoes() {
    assertThat(DayHours.within(Instant.MIN)).isEqualTo(Instant.parse("0001-01-01T00:00:00Z"));
    assertThat(DayHours.within(Instant.MAX)).isEqualTo(Instant.parse("9999-01-01T00:00:00Z"));
    assertThat(DayHours.within(on(23, "09:00"))).isEqualTo(on(23, "09:00"));
  }

  @Test
  void hoursThatSummerTimeLeavesOutAreNotWorkedThatDay() {
    // 2:00 to 3:00 did not exist on 29 March 2026 in this zone (IANA time zone database).
    var night =
        new DayHours(LocalTime.of(2, 0), LocalTime.of(3, 0), List.of(), ZoneId.of("Europe/Berlin"));
    var midnight = Instant.parse("2026-03-28T23:00:00Z");
    assertThat(night.between(midnight, midnight.plus(Duration.ofHours(23)))).isZero();
    assertThat(night.after(midnight, Duration.ofHours(1)))
        .contains(Instant.parse("2026-03-30T01:00:00Z"));
  }

  // The tz database: Samoa left out the whole of 30 December 2011.
  @Test
  void nobodyWorksOnADayThatWasLeftOut() {
    var hours = DayHours.usual(ZoneId.of("Pacific/Apia"));
    var thursday = Instant.parse("2011-12-29T19:00:00Z");
    assertThat(hours.between(thursday, Instant.parse("2011-12-31T04:00:00Z")))
        .isEqualTo(Duration.ofHours(16));
    assertThat(hours.after(thursday, Duration.ofHours(10)))
        .contains(Instant.parse("2011-12-30T21:00:00Z"));
  }

  // Europe/Berlin, 29 March 2026: the clocks go from two to three.
  @Test
  void aBreakInTheHourThatIsLeftOutCountsNoTimeTwice() {
    var night =
        new DayHours(
            LocalTime.of(2, 0),
            LocalTime.of(4, 0),
            List.of(new DayHours.Break(LocalTime.of(2, 30), LocalTime.of(3, 0))),
            ZoneId.of("Europe/Berlin"));
    var midnight = Instant.parse("2026-03-28T23:00:00Z");
    assertThat(night.between(midnight, midnight.plus(Duration.ofHours(23))))
        .isEqualTo(Duration.ofHours(1));
    assertThat(night.after(midnight, Duration.ofMinutes(60)))
        .contains(Instant.parse("2026-03-29T02:00:00Z"));
  }

  private static DayHours hours(String from, String until, String... breaks) {
    return new DayHours(
        LocalTime.parse(from),
        LocalTime.parse(until),
        Arrays.stream(breaks)
            .map(one -> one.split("-"))
            .map(one -> new DayHours.Break(LocalTime.parse(one[0]), LocalTime.parse(one[1])))
            .toList(),
        ZoneOffset.UTC);
  }
}
