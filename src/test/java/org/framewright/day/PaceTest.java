package org.framewright.day;

import static org.assertj.core.api.Assertions.within;
import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class PaceTest {
  private static final Pace EIGHT = pace(9, 11, 8, 14, 10, 12, 9, 11);

  private static Pace pace(int... minutes) {
    return new Pace(Arrays.stream(minutes).mapToObj(Duration::ofMinutes).toList());
  }

  private static double minutes(Duration time) {
    return time.toMillis() / 60_000.0;
  }

  // Takt = available time over demand; the figures are common practice, no source.
  @Test
  void anEightHourDayOfFortySetupsAllowsTwelveMinutesEach() {
    assertThat(Pace.takt(Duration.ofHours(8), 40)).contains(Duration.ofMinutes(12));
    assertThat(Pace.takt(Duration.ofHours(8), 0)).isEmpty();
  }

  // NIST/SEMATECH e-Handbook, 6.3.2.4 (the section is from memory); the value was computed by hand.
  @Test
  void theMovingAverageFollowsTheHandbook() {
    assertThat(minutes(EIGHT.recent().orElseThrow())).isCloseTo(10.524, within(0.001));
  }

  @Test
  void twentyMoreSetupsTake210MinutesAtTheMean() {
    assertThat(EIGHT.forecast(20)).contains(Duration.ofMinutes(210));
  }

  @Test
  void saysNothingBeforeTheFirstSetup() {
    assertThat(pace().mean()).isEmpty();
    assertThat(pace().recent()).isEmpty();
    assertThat(pace().forecast(20)).isEmpty();
  }

  @Test
  void setupsThatTookNextToNoTimeSayNothing() {
    var ticked = new Pace(java.util.Collections.nCopies(6, Duration.ofSeconds(9)));
    assertThat(ticked.tooEarly()).isTrue();
    assertThat(ticked.mean()).isEmpty();
    assertThat(ticked.recent()).isEmpty();
    assertThat(ticked.forecast(20)).isEmpty();
    assertThat(new Pace(List.of(Duration.ofSeconds(10))).tooEarly()).isFalse();
  }

  @Test
  void reckonsInPartsOfSeconds() {
    var times = List.of(Duration.ofMillis(90_250), Duration.ofMillis(750));
    assertThat(new Pace(times).mean()).contains(Duration.ofMillis(45_500));
  }

  @Test
  void oneTimeIsItsOwnMean() {
    assertThat(new Pace(List.of(Duration.ofMinutes(10))).mean()).contains(Duration.ofMinutes(10));
  }
}
