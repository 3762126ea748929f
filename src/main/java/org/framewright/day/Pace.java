package org.framewright.day;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * How long setups take.
 *
 * @param times the working time of each setup that was shot, in the order in which they were, from
 *     the moment it came on set until the next one did
 */
public record Pace(List<Duration> times) {
  /** The weight of the newest time. Common practice for slow drifts: 0.2 to 0.3. */
  static final double WEIGHT = 0.3;

  /**
   * Nobody shoots a setup in less: it was ticked, or shot outside the hours of work. Common
   * practice, no source.
   */
  private static final Duration SHORTEST = Duration.ofSeconds(10);

  public Pace {
    times = List.copyOf(times);
  }

  /** Whether there is no telling yet: nothing was shot, or in no time. */
  public boolean tooEarly() {
    return times.isEmpty() || meanMinutes() < inMinutes(SHORTEST);
  }

  /** The mean; none where it is too early to tell. */
  public Optional<Duration> mean() {
    return tooEarly() ? Optional.empty() : Optional.of(minutes(meanMinutes()));
  }

  /**
   * The exponentially weighted moving average, which follows the day as it slows down or speeds up.
   * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4, with the first time as the
   * start.
   */
  public Optional<Duration> recent() {
    if (tooEarly()) {
      return Optional.empty();
    }
    double average = inMinutes(times.getFirst());
    for (var time : times.subList(1, times.size())) {
      average = WEIGHT * inMinutes(time) + (1 - WEIGHT) * average;
    }
    return Optional.of(minutes(average));
  }

  /** The time that each setup may take if all are to be done: available time over demand. */
  public static Optional<Duration> takt(Duration available, int setups) {
    return setups == 0 ? Optional.empty() : Optional.of(available.dividedBy(setups));
  }

  /** The time that this many more setups take at the mean. */
  public Optional<Duration> forecast(int setups) {
    return mean().map(mean -> minutes(setups * meanMinutes()));
  }

  private double meanMinutes() {
    return times.stream().mapToDouble(Pace::inMinutes).average().orElseThrow();
  }

  static double inMinutes(Duration time) {
    return time.toSeconds() / 60.0 + time.toNanosPart() / 60e9;
  }

  static Duration minutes(double minutes) {
    return Duration.ofMillis(Math.round(minutes * 60_000));
  }
}
