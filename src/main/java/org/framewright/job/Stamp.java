package org.framewright.job;

import java.time.Instant;
import java.util.Comparator;

/**
 * When an event was made, by a hybrid logical clock, and by which station. No two events share one,
 * and the order of stamps agrees with who had seen what.
 *
 * @param millis milliseconds since 1970-01-01T00:00Z: the station's clock, or what the station had
 *     seen if that was later
 * @param count tells apart what falls into one millisecond
 */
record Stamp(long millis, int count, String station) implements Comparable<Stamp> {
  private static final Comparator<Stamp> ORDER =
      Comparator.comparingLong(Stamp::millis)
          .thenComparingInt(Stamp::count)
          .thenComparing(Stamp::station);

  @Override
  public int compareTo(Stamp other) {
    return ORDER.compare(this, other);
  }

  Instant instant() {
    return Instant.ofEpochMilli(millis);
  }
}
