package org.framewright.frames;

import java.time.Duration;
import org.framewright.base.Durations;

/** How far a clock is off, in units that people use for it. */
final class ClockWords {
  private static final double DAYS_OF_A_YEAR = 365.25;
  private static final Duration TWO_DAYS = Duration.ofDays(2);

  private ClockWords() {}

  /** Whole years, of a year or more; else 0. */
  static long years(Duration off) {
    return (long) (off.abs().toDays() / DAYS_OF_A_YEAR);
  }

  /**
   * {@code 12 s slow}, {@code 3 days ahead}, {@code 22 years behind}.
   *
   * @param ahead by how much it is ahead; negative for behind
   */
  static String off(Duration ahead) {
    boolean behind = ahead.isNegative();
    long years = years(ahead);
    if (years > 0) {
      return years + (years == 1 ? " year" : " years") + (behind ? " behind" : " ahead");
    }
    boolean days = ahead.abs().compareTo(TWO_DAYS) >= 0;
    return Durations.words(ahead)
        + (days ? (behind ? " behind" : " ahead") : (behind ? " slow" : " fast"));
  }
}
