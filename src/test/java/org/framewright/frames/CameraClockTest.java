package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class CameraClockTest {
  @Test
  void saysHowFarAClockIsOff() {
    assertThat(clock(12).description()).isEqualTo("12 s slow");
    assertThat(clock(-119).description()).isEqualTo("119 s fast");
    assertThat(clock(300).description()).isEqualTo("5 min slow");
    assertThat(clock(-3601.5).description()).isEqualTo("1 h fast");
    assertThat(clock(7290).description()).isEqualTo("2 h slow");
  }

  @Test
  void moreThanFiveSecondsEitherWayAreWorthSaying() {
    assertThat(clock(5).isOff()).isFalse();
    assertThat(clock(-5).isOff()).isFalse();
    assertThat(clock(5.1).isOff()).isTrue();
    assertThat(clock(-5.1).isOff()).isTrue();
    assertThat(
            new CameraClock(clock(1).camera(), OptionalDouble.empty(), OptionalDouble.empty(), 9, 0)
                .isOff())
        .isFalse();
  }

  @Test
  void aMinuteAndAHalfAroundAWholeHourIsAWholeHour() {
    assertThat(clock(3690).wholeHours()).hasValue(1);
    assertThat(clock(3690.1).wholeHours()).isEmpty();
    assertThat(clock(-7110).wholeHours()).hasValue(-2);
    assertThat(clock(80).wholeHours()).isEmpty();
  }

  private static CameraClock clock(double seconds) {
    return new CameraClock(
        new Camera("Invented Works", "Studio Body A", "1"),
        OptionalDouble.of(seconds),
        OptionalDouble.of(0),
        9,
        9);
  }
}
