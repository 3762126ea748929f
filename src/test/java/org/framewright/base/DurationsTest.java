package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DurationsTest {
  @ParameterizedTest
  @CsvSource({
    "PT0S, 0 s",
    "PT0.5S, 1 s",
    "PT0.499S, 0 s",
    "PT119S, 119 s",
    "PT119.6S, 2 min",
    "PT2M, 2 min",
    "PT37M29S, 37 min",
    "PT37M30S, 38 min",
    "PT1H59M, 119 min",
    "PT2H, 2 h",
    "PT2H5M, 2 h 5 min",
    "PT47H59M, 47 h 59 min",
    "PT48H, 2 days",
    "P10D, 10 days",
    "-PT45S, 45 s",
    "-PT3H, 3 h"
  })
  void saysADurationAsPeopleDo(Duration duration, String words) {
    assertThat(Durations.words(duration)).isEqualTo(words);
  }

  @Test
  void countsInMinutesAtTheLeastWhereAsked() {
    assertThat(Durations.minutes(Duration.ofSeconds(20))).isEqualTo("0 min");
    assertThat(Durations.minutes(Duration.ofSeconds(30))).isEqualTo("1 min");
    assertThat(Durations.minutes(Duration.ofMinutes(-119))).isEqualTo("119 min");
  }
}
