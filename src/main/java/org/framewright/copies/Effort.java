package org.framewright.copies;

import java.lang.management.ManagementFactory;
import java.util.function.LongSupplier;

/**
 * How much of its time a thread computes; the rest it waits, one that reads mostly for its disk.
 */
final class Effort {
  private final LongSupplier clock;
  private final LongSupplier computed;
  private long since;
  private long computedBefore;

  /**
   * From now on.
   *
   * @param clock in nanoseconds, as {@link System#nanoTime}
   * @param computed the processor time of the thread, in nanoseconds
   */
  Effort(LongSupplier clock, LongSupplier computed) {
    this.clock = clock;
    this.computed = computed;
    share();
  }

  /** Of the thread that asks; one that seems to wait all the time where the system cannot tell. */
  static Effort ofThisThread() {
    var threads = ManagementFactory.getThreadMXBean();
    return new Effort(
        System::nanoTime,
        threads.isCurrentThreadCpuTimeSupported() ? threads::getCurrentThreadCpuTime : () -> 0);
  }

  /** The share since it was asked for last, from 0 to about 1. */
  double share() {
    long now = clock.getAsLong();
    long computedNow = computed.getAsLong();
    double share = now == since ? 0 : (double) (computedNow - computedBefore) / (now - since);
    since = now;
    computedBefore = computedNow;
    return share;
  }
}
