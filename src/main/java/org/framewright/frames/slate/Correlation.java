package org.framewright.frames.slate;

/** How well greys go with what should be dark and light: their correlation, whatever the light. */
final class Correlation {
  private int count;
  private double sum;
  private double squares;
  private double expected;
  private double product;

  void clear() {
    count = 0;
    sum = 0;
    squares = 0;
    expected = 0;
    product = 0;
  }

  /**
   * Adds a place.
   *
   * @param dark 1 dark, -1 light
   */
  void add(int dark, double grey) {
    count++;
    sum += grey;
    squares += grey * grey;
    expected += dark;
    product -= dark * grey;
  }

  /** 1 where all is as it should be, 0 by chance. */
  double value() {
    double spread = (count * squares - sum * sum) * (count * (double) count - expected * expected);
    return spread <= 0 ? 0 : (count * product + sum * expected) / Math.sqrt(spread);
  }
}
