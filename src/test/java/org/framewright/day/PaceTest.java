package org.framewright.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  // Computed by hand: n = 8, s = 1.9272, t = 2.3646, m = 20.
  @Test
  void twentyMoreSetupsTake210MinutesGiveOrTake38() {
    assertThat(EIGHT.forecast(20)).contains(Duration.ofMinutes(210));
    assertThat(minutes(EIGHT.margin(20).orElseThrow())).isCloseTo(38.1, within(0.1));
  }

  @Test
  void saysNoMarginForFewerThanFiveSetups() {
    assertThat(pace(9, 11, 8, 14).margin(20)).isEmpty();
    assertThat(pace(9, 11, 8, 14, 10).margin(20)).isPresent();
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
    assertThat(ticked.margin(20)).isEmpty();
    assertThat(new Pace(List.of(Duration.ofSeconds(10))).tooEarly()).isFalse();
  }

  // Critical values of Student's t, NIST/SEMATECH e-Handbook, 1.3.6.7.2 (from memory).
  @ParameterizedTest
  @CsvSource({"4, 2.776", "7, 2.365", "10, 2.228", "30, 2.042", "100, 1.984"})
  void studentsTAgreesWithThePublishedTable(int degrees, double published) {
    assertThat(Pace.studentT(degrees)).isCloseTo(published, within(0.0013));
  }

  // Computed by SciPy 1.17.1, scipy.stats.t.ppf(0.975, degrees). The expansion leaves out terms
  // from
  // the fifth power of the degrees on.
  @ParameterizedTest
  @CsvSource({
    "4, 2.7764451051977934",
    "5, 2.5705818356363146",
    "7, 2.364624251592784",
    "10, 2.228138851986274",
    "30, 2.0422724563012378",
    "100, 1.9839715185235518",
    "300, 1.9679030112610865",
  })
  void studentsTComesCloserWithTheFifthPowerOfItsDegrees(int degrees, double exact) {
    assertThat(Pace.studentT(degrees)).isCloseTo(exact, within(Math.pow(degrees, -5)));
  }

  @Test
  void reckonsInPartsOfSeconds() {
    var times = List.of(Duration.ofMillis(90_250), Duration.ofMillis(750));
    assertThat(new Pace(times).mean()).contains(Duration.ofMillis(45_500));
  }

  @Test
  void aSteadyPaceHasNoMargin() {
    assertThat(new Pace(Stream.generate(() -> Duration.ofMinutes(10)).limit(6).toList()).margin(9))
        .contains(Duration.ZERO);
    assertThat(new Pace(List.of(Duration.ofMinutes(10))).mean()).contains(Duration.ofMinutes(10));
  }
}
