package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class RatesTest {
  private long nanos = 5;
  private final Rates rates = new Rates(3, 0.5, () -> nanos);

  @Test
  void letsSoManyThroughAtOnceAndThenSaysHowLongToWait() {
    for (int i = 0; i < 3; i++) {
      assertThat(rates.take("one")).isEqualTo(OptionalInt.empty());
    }
    assertThat(rates.take("one")).isEqualTo(OptionalInt.of(2));
    nanos += 1_500_000_000L;
    assertThat(rates.take("one")).isEqualTo(OptionalInt.of(1));
    nanos += 600_000_000L;
    assertThat(rates.take("one")).isEqualTo(OptionalInt.empty());
    assertThat(rates.take("one").isPresent()).isTrue();
  }

  @Test
  void countsEachByItself() {
    for (int i = 0; i < 4; i++) {
      rates.take("one");
    }
    assertThat(rates.take("other")).isEqualTo(OptionalInt.empty());
  }

  @Test
  void savesUpNoMoreThanAtOnce() {
    rates.take("one");
    nanos += 1_000_000_000_000L;
    for (int i = 0; i < 3; i++) {
      assertThat(rates.take("one")).isEqualTo(OptionalInt.empty());
    }
    assertThat(rates.take("one").isPresent()).isTrue();
  }
}
