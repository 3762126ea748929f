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

  /** Below this many times there is no telling how far they scatter. */
  static final int FEWEST = 5;

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

  /**
   * How far that forecast may be off, with 95 of 100 falling inside: t s sqrt(m + m²/n), Student's
   * t with n - 1 degrees of freedom. None for fewer than five times, and where it is too early to
   * tell.
   */
  public Optional<Duration> margin(int setups) {
    int n = times.size();
    if (n < FEWEST || tooEarly()) {
      return Optional.empty();
    }
    double mean = meanMinutes();
    double squares = times.stream().mapToDouble(time -> Math.pow(inMinutes(time) - mean, 2)).sum();
    double deviation = Math.sqrt(squares / (n - 1));
    double m = setups;
    return Optional.of(minutes(studentT(n - 1) * deviation * Math.sqrt(m + m * m / n)));
  }

  private double meanMinutes() {
    return times.stream().mapToDouble(Pace::inMinutes).average().orElseThrow();
  }

  /**
   * The two-sided 95 % point of Student's t, by the expansion of Abramowitz and Stegun, Handbook of
   * Mathematical Functions, 26.7.5. Off by less than 0.001 from four degrees of freedom on.
   */
  static double studentT(int degrees) {
    double z = 1.959963984540054;
    double v = degrees;
    return z
        + (Math.pow(z, 3) + z) / (4 * v)
        + (5 * Math.pow(z, 5) + 16 * Math.pow(z, 3) + 3 * z) / (96 * v * v)
        + (3 * Math.pow(z, 7) + 19 * Math.pow(z, 5) + 17 * Math.pow(z, 3) - 15 * z)
            / (384 * Math.pow(v, 3))
        + (79 * Math.pow(z, 9)
                + 776 * Math.pow(z, 7)
                + 1482 * Math.pow(z, 5)
                - 1920 * Math.pow(z, 3)
                - 945 * z)
            / (92160 * Math.pow(v, 4));
  }

  private static double inMinutes(Duration time) {
    return time.toSeconds() / 60.0 + time.toNanosPart() / 60e9;
  }

  private static Duration minutes(double minutes) {
    return Duration.ofMillis(Math.round(minutes * 60_000));
  }
}
