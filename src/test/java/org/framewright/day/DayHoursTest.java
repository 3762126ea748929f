package org.framewright.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
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
    assertThat(USUAL.after(on(23, "12:30"), Duration.ofHours(1))).isEqualTo(on(23, "14:30"));
    assertThat(USUAL.after(on(23, "17:00"), Duration.ofHours(2))).isEqualTo(on(24, "10:00"));
    assertThat(USUAL.after(on(23, "07:00"), Duration.ofHours(1))).isEqualTo(on(23, "10:00"));
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
    assertThat(USUAL.between(from, USUAL.after(from, work))).isEqualTo(work);
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
}
