package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
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
    assertThat(forecast.earliest()).isEmpty();
    assertThat(forecast.latest()).isEmpty();
    assertThat(forecast.noForecast()).isEmpty();
  }

  private static String why(Forecast forecast) {
    return forecast.whyNoRange().orElseThrow().english();
  }

  @Test
  void theRangeGoesRoundTheFinishAndNeverBeginsBeforeNow() {
    var forecast = Forecast.of(3, pace(10, 20, 15, 5, 30), HOURS, NINE);
    assertThat(forecast.whyNoRange()).isEmpty();
    assertThat(forecast.earliest().orElseThrow()).isBetween(NINE, forecast.finish().orElseThrow());
    assertThat(forecast.latest().orElseThrow()).isAfter(forecast.finish().orElseThrow());
  }

  @Test
  void whereNobodyCanSayHowFarItMayBeOffThatIsSaid() {
    assertThat(why(Forecast.of(3, pace(20, 21, 22, 20), HOURS, NINE)))
        .isEqualTo("too few setups were shot to tell how far that may be off");
    var scattered = Forecast.of(400, pace(1, 1, 1, 1, 1500), HOURS, NINE);
    assertThat(why(scattered)).startsWith("what was shot took too different times");
    assertThat(scattered.earliest()).isEmpty();
    assertThat(Forecast.of(0, pace(20, 20), HOURS, NINE).whyNoRange()).isEmpty();
    assertThat(Forecast.of(3, pace(), HOURS, NINE).whyNoRange()).isEmpty();
  }

  private static Workload.Item item(double size, String kind) {
    return new Workload.Item(size, Optional.of(kind));
  }

  private static Forecast ofKinds(List<Workload.Item> left) {
    var shot = Collections.nCopies(6, new Workload.Shot(item(2, "shirt"), Duration.ofMinutes(10)));
    return Forecast.of(new Workload(shot, left), pace(10, 10, 10, 10, 10, 10), HOURS, NINE);
  }

  @Test
  void kindsThatWereNotShotYetAndLookAsLargeGiveNoRange() {
    var forecast = ofKinds(List.of(item(2, "shirt"), item(2, "coat"), item(2, "coat")));
    assertThat(why(forecast)).isEqualTo("2 of 3 left are of a kind that was not shot yet");
    assertThat(forecast.finish()).isPresent();
    assertThat(forecast.earliest()).isEmpty();
  }

  @Test
  void whereTheListSaysHowLargeTheyAreThatTellsOfNewKinds() {
    var forecast = ofKinds(List.of(item(2, "shirt"), item(6, "coat")));
    assertThat(forecast.work()).contains(Duration.ofMinutes(40));
    assertThat(forecast.whyNoRange()).isEmpty();
    assertThat(forecast.latest()).isPresent();
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
