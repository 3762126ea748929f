package org.framewright.day;

import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * How much work is left, from what was done: a ratio estimate (Cochran, Sampling Techniques, 3rd
 * edition, chapter 6), as setups differ in size. Older times count less, as days speed up and slow
 * down.
 *
 * @param work what is left, in the unit of the times that were given
 * @param range where it likely ends; none where nobody can say
 */
record Estimate(double work, Optional<Range> range) {
  /** The weight of a time against the next one's. */
  static final double DISCOUNT = 0.9;

  /** Below this many times there is no telling how far they scatter. Common practice, no source. */
  static final int FEWEST = 5;

  /** Two-sided. */
  private static final double COVERAGE = 0.95;

  /**
   * Something that was done.
   *
   * @param size how much of it there was, above 0
   * @param time how long it took, from 0 up
   */
  record Done(double size, double time) {}

  /**
   * Where a time likely lies.
   *
   * @param least from 0 up
   * @param most at least as much
   */
  record Range(double least, double most) {}

  /**
   * Estimates what is left.
   *
   * @param done in the order in which it was, at least one
   * @param left the size of each that is left, above 0
   */
  static Estimate of(List<Done> done, List<Double> left) {
    return of(done, left, DISCOUNT);
  }

  static Estimate of(List<Done> done, List<Double> left, double discount) {
    double weights = 0;
    double squares = 0;
    double sizes = 0;
    double times = 0;
    double weight = 1;
    for (var one : done.reversed()) {
      weights += weight;
      squares += weight * weight;
      sizes += weight * one.size();
      times += weight * one.time();
      weight *= discount;
    }
    double ratio = times / sizes;
    double ahead = left.stream().mapToDouble(Double::doubleValue).sum();
    double work = ratio * ahead;
    if (done.size() < FEWEST || work <= 0) {
      return new Estimate(work, Optional.empty());
    }
    double effective = weights * weights / squares;
    double errors = 0;
    weight = 1;
    for (var one : done.reversed()) {
      double error = one.time() - ratio * one.size();
      errors += weight * error * error;
      weight *= discount;
    }
    double deviation = Math.sqrt(errors / weights * effective / (effective - 1));
    // The errors are those of things of the mean size.
    double mean = sizes / weights;
    double scatter =
        (left.stream().mapToDouble(size -> size * size).sum() + ahead * ahead / effective)
            / (mean * mean);
    double margin = quantile(effective - 1) * deviation * Math.sqrt(scatter);
    // On a logarithmic axis, as no work takes less than no time.
    double factor = Math.exp(margin / work);
    return new Estimate(work, Optional.of(new Range(work / factor, work * factor)));
  }

  private static double quantile(double degrees) {
    return TDistribution.of(degrees).inverseSurvivalProbability((1 - COVERAGE) / 2);
  }
}
