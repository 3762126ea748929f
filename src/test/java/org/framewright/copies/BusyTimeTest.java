package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** The time that a disk was at work. */
class BusyTimeTest {
  private static final long SECOND = 1_000_000_000;

  @Test
  void timeInWhichTwoAreAtWorkCountsOnceAndTimeOfNobodyNot() {
    var now = new AtomicLong(-5 * SECOND);
    var busy = new BusyTime(now::get);
    busy.begin();
    now.addAndGet(SECOND);
    busy.begin();
    now.addAndGet(SECOND);
    busy.end();
    assertThat(busy.seconds()).isZero();
    now.addAndGet(SECOND);
    busy.end();
    assertThat(busy.seconds()).isEqualTo(3);
    now.addAndGet(60 * SECOND);
    busy.begin();
    now.addAndGet(SECOND / 2);
    busy.end();
    assertThat(busy.seconds()).isEqualTo(3.5);
  }
}
