package org.framewright.day;

import static org.assertj.core.api.Assertions.within;
import static org.framewright.AssertThat.assertThat;

import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** Figures: 40 looks of 25 frames of 60 MB are 60 GB; computed by hand. */
class SpaceTest {
  private static final long MB = 1_000_000L;

  @Test
  void fortyLooksOfTwentyFiveFramesNeedSixtyGigabytes() {
    var space = new Space(25 * 60 * MB, 25, OptionalLong.of(40 * 25), 500_000 * MB);
    assertThat(space.bytesPerFrame()).isEqualTo(60 * MB);
    assertThat(space.needed()).hasValue(60_000 * MB);
    assertThat(space.needed().getAsLong() / Math.pow(1024, 3)).isCloseTo(55.88, within(0.005));
    assertThat(space.enough()).isTrue();
  }

  @Test
  void warnsWhenLessThanATenthWouldBeLeft() {
    var needed = 60_000 * MB;
    assertThat(new Space(60 * MB, 1, OptionalLong.of(1000), needed).enough()).isFalse();
    assertThat(new Space(60 * MB, 1, OptionalLong.of(1000), needed * 10 / 9 + 10).enough())
        .isTrue();
  }

  @Test
  void moreThanAnyDiskHoldsIsNotEnough() {
    var space = new Space(1L << 40, 1, OptionalLong.of(1L << 40), 500_000 * MB);
    assertThat(space.needed()).hasValue(Long.MAX_VALUE);
    assertThat(space.enough()).isFalse();
    var just = new Space(2L << 40, 1, OptionalLong.of(1L << 22), 500_000 * MB);
    assertThat(just.needed()).hasValue(Long.MAX_VALUE);
    assertThat(new Space(1L << 40, 1, OptionalLong.of(1L << 22), 1).needed()).hasValue(1L << 62);
  }

  @Test
  void saysNothingWhereNobodyKnowsHowManyAreToCome() {
    var space = new Space(60 * MB, 1, OptionalLong.empty(), 0);
    assertThat(space.needed()).isEmpty();
    assertThat(space.enough()).isTrue();
  }

  @Test
  void exactlyATenthLeftIsEnough() {
    assertThat(new Space(9, 1, OptionalLong.of(1), 10).enough()).isTrue();
    assertThat(new Space(10, 1, OptionalLong.of(1), 10).enough()).isFalse();
  }

  @Test
  void saysNothingBeforeTheFirstFrame() {
    var space = new Space(0, 0, OptionalLong.of(1000), 10);
    assertThat(space.needed()).isEmpty();
    assertThat(space.enough()).isTrue();
  }

  @Test
  void needsNothingWhereNoMoreFramesAreToCome() {
    var space = new Space(60 * MB, 1, OptionalLong.of(0), 0);
    assertThat(space.needed()).hasValue(0);
    assertThat(space.enough()).isTrue();
  }
}
