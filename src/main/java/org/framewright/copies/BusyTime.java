package org.framewright.copies;

import java.util.function.LongSupplier;

/** How long a disk was at work, where several threads may keep it busy at once. */
final class BusyTime {
  private final LongSupplier clock;
  private int users;
  private long since;
  private long nanos;

  /**
   * None so far.
   *
   * @param clock in nanoseconds, as {@link System#nanoTime}
   */
  BusyTime(LongSupplier clock) {
    this.clock = clock;
  }

  synchronized void begin() {
    if (users++ == 0) {
      since = clock.getAsLong();
    }
  }

  synchronized void end() {
    if (--users == 0) {
      nanos += clock.getAsLong() - since;
    }
  }

  /** So far, without work that has not ended; time in which two were at work counts once. */
  synchronized double seconds() {
    return nanos / 1e9;
  }
}
