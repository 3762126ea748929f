package org.framewright.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class ForecastTest {
  private static final DayHours HOURS = DayHours.usual(ZoneOffset.UTC);
  private static final Instant NINE = Instant.parse("2026-11-23T09:00:00Z");

  private static Pace pace(long... minutes) {
    return new Pace(Arrays.stream(minutes).mapToObj(Duration::ofMinutes).toList());
  }

  @Test
  void threeSetupsOfTwentyMinutesAreDoneAtTenAndHave160MinutesEach() {
    var forecast = Forecast.of(3, pace(20), HOURS, NINE);
    assertThat(forecast.work()).contains(Duration.ofHours(1));
    assertThat(forecast.finish()).contains(Instant.parse("2026-11-23T10:00:00Z"));
    assertThat(forecast.takt()).contains(Duration.ofMinutes(160));
    assertThat(forecast.margin()).isEmpty();
    assertThat(forecast.earliest()).isEmpty();
    assertThat(forecast.latest()).isEmpty();
    assertThat(forecast.noForecast()).isEmpty();
  }

  @Test
  void aMarginAsLargeAsTheWorkBeginsItsRangeNow() {
    var forecast = Forecast.of(1, pace(1, 1, 1, 1, 100), HOURS, NINE);
    assertThat(forecast.margin().orElseThrow()).isGreaterThan(forecast.work().orElseThrow());
    assertThat(forecast.earliest()).contains(NINE);
    assertThat(forecast.latest().orElseThrow()).isAfter(forecast.finish().orElseThrow());
  }

  @Test
  void saysWhyThereIsNoForecast() {
    assertThat(Forecast.of(3, pace(), HOURS, NINE).noForecast()).contains("too early to tell");
    // 1,000 setups of 8 hours are 1,000 days.
    var endless = Forecast.of(1000, pace(480), HOURS, NINE);
    assertThat(endless.work()).contains(Duration.ofHours(8000));
    assertThat(endless.finish()).isEmpty();
    assertThat(endless.noForecast()).contains("no forecast beyond 366 days");
    assertThat(Forecast.of(0, pace(), HOURS, NINE).noForecast()).isEmpty();
  }

  @Test
  void aMomentThatNoCalendarHoldsEndsInAForecastToo() {
    for (var now : List.of(Instant.MIN, Instant.EPOCH, Instant.MAX)) {
      assertThat(Forecast.of(3, pace(20), HOURS, now).finish()).isPresent();
    }
  }

  @Test
  void nothingIsToBeDoneInTheHoursThatAreOver() {
    var evening = Instant.parse("2026-11-23T19:00:00Z");
    assertThat(Forecast.of(3, pace(20), HOURS, evening).takt()).contains(Duration.ZERO);
  }
}
