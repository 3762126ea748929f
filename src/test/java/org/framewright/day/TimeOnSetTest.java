package org.framewright.day;

import static org.assertj.core.api.Assertions.within;
import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.api.Test;

class TimeOnSetTest {
  /** The worked example of the NIST/SEMATECH e-Handbook, 7.1.6, from memory. */
  private static final double[] NIST = {
    30, 171, 184, 201, 212, 250, 265, 270, 272, 289, 305, 306, 322, 322, 336, 346, 351, 370, 390,
    404, 409, 411, 436, 437, 439, 441, 444, 448, 451, 453, 470, 480, 482, 487, 494, 495, 499, 503,
    514, 521, 522, 527, 548, 550, 559, 560, 570, 572, 574, 578, 585, 592, 592, 607, 616, 618, 621,
    629, 637, 638, 640, 656, 668, 707, 709, 719, 737, 739, 752, 758, 766, 792, 792, 794, 802, 818,
    830, 832, 843, 858, 860, 869, 918, 925, 953, 991, 1000, 1005, 1068, 1441
  };

  @Test
  void theUpperFenceIsThatOfTheHandbook() {
    assertThat(NIST.length).isEqualTo(90);
    assertThat(TimeOnSet.fence(NIST)).isCloseTo(1211.0, within(0.5));
  }

  @Test
  void ofFourTimesNoneIsFarOffTheOthers() {
    assertThat(TimeOnSet.fence(1, 1, 1, 900)).isInfinite();
    assertThat(TimeOnSet.fence(10, 11, 12, 13, 60)).isLessThan(100);
  }
}
