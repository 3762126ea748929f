package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.framewright.job.JobState;

/**
 * How long one setup took.
 *
 * @param setup its code
 * @param time its working time, from the moment it came on set until the next one did
 * @param outlier whether that is far more than the others took
 */
public record TimeOnSet(String setup, Duration time, boolean outlier) {
  /** Fewer have no quarters to speak of. */
  private static final int FEWEST = 5;

  /** Of the distance between the quartiles. */
  private static final double FENCE = 1.5;

  /** Those of all setups that were shot, in the order in which they were last on set. */
  public static List<TimeOnSet> of(JobState state, DayHours hours, Instant now) {
    var times = SoFar.times(state, hours, now);
    double fence = fence(times.values().stream().mapToDouble(Duration::toMillis).toArray());
    return times.entrySet().stream()
        .map(one -> new TimeOnSet(one.getKey(), one.getValue(), one.getValue().toMillis() > fence))
        .toList();
  }

  /**
   * The upper inner fence, above which a value is an outlier. Source: NIST/SEMATECH e-Handbook of
   * Statistical Methods, 7.1.6, with its quartiles at p(n + 1).
   */
  static double fence(double... values) {
    if (values.length < FEWEST) {
      return Double.POSITIVE_INFINITY;
    }
    var sorted = values.clone();
    Arrays.sort(sorted);
    double upper = quantile(sorted, 0.75);
    return upper + FENCE * (upper - quantile(sorted, 0.25));
  }

  private static double quantile(double[] sorted, double part) {
    double place = part * (sorted.length + 1) - 1;
    int below = Math.clamp((int) Math.floor(place), 0, sorted.length - 1);
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }
}
