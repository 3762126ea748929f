package org.framewright.base;

import java.time.Duration;

/** Durations in words. */
public final class Durations {
  private static final int FIRST_IN_MINUTES = 120;

  private Durations() {}

  /**
   * A duration as people say it: {@code 45 s}, {@code 12 min}, {@code 3 h}, {@code 2 h 5 min},
   * {@code 4 days}; seconds below two minutes, minutes below two hours, hours below two days. A
   * negative one loses its sign.
   */
  public static String words(Duration duration) {
    var time = duration.abs();
    long seconds = Math.round(time.toMillis() / 1000.0);
    if (seconds < FIRST_IN_MINUTES) {
      return seconds + " s";
    }
    return minutes(time);
  }

  /** The same, to be said in any language. */
  public static Text said(Duration duration) {
    long days = days(duration);
    return days > 0 ? Text.of("{0} days", days) : Text.of(words(duration));
  }

  /** The same for what is counted in minutes at the least: {@code 0 min}, {@code 37 min}. */
  public static String minutes(Duration duration) {
    long days = days(duration);
    return days > 0 ? days + " days" : workingTime(duration);
  }

  /** Of two days on; 0 below. */
  private static long days(Duration duration) {
    long minutes = Math.round(duration.abs().toMillis() / 60_000.0);
    return minutes >= 2 * 24 * 60 ? Math.round(minutes / (24 * 60.0)) : 0;
  }

  /** The same for working time, of which no day has 24 hours: {@code 37 min}, {@code 60 h}. */
  public static String workingTime(Duration duration) {
    long minutes = Math.round(duration.abs().toMillis() / 60_000.0);
    if (minutes < 120) {
      return minutes + " min";
    }
    return minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
  }
}
