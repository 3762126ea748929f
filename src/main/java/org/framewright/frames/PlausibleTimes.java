package org.framewright.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * Between which times the frames of a job can have been taken, as far as that is known. A year
 * before a job begins is much, but older frames are brought into jobs; a day from now on is more
 * than zones differ. Both are judgement, no source.
 *
 * @param from before this none can have been taken
 * @param until after this none can have been taken
 */
public record PlausibleTimes(Instant from, Instant until) {
  private static final Duration BEFORE = Duration.ofDays(365);
  private static final Duration AFTER = Duration.ofDays(1);

  /** Nothing is known. */
  public static final PlausibleTimes ANY = new PlausibleTimes(Instant.MIN, Instant.MAX);

  /**
   * Of a job.
   *
   * @param began when it began, where that is known
   */
  public static PlausibleTimes of(Optional<Instant> began, Instant now) {
    return new PlausibleTimes(
        began.map(time -> time.minus(BEFORE)).orElse(Instant.MIN), now.plus(AFTER));
  }

  boolean holds(Instant time) {
    return !time.isBefore(from) && !time.isAfter(until);
  }

  /** How far ahead a time is of the time that it can be at the latest or must be at the least. */
  Duration ahead(Instant time) {
    return time.isAfter(until)
        ? Duration.between(until.minus(AFTER), time)
        : Duration.between(from.plus(BEFORE), time);
  }
}
