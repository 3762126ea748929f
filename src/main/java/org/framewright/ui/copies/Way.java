package org.framewright.ui.copies;

import java.util.List;

/**
 * How far the work is.
 *
 * @param what is being done
 * @param figure how many files of how many, how much of how much
 * @param left how long it still takes; empty as long as nobody can say
 * @param part from 0 to 1; below 0 as long as nobody knows
 * @param targets of a copy, how far each is and how fast
 */
record Way(String what, String figure, String left, double part, List<Target> targets) {
  /** Nothing is under way. */
  static final Way NONE = new Way("", "", "", -1, List.of());

  /**
   * A place that is copied to.
   *
   * @param name where
   * @param figure how far, how fast, how much longer
   */
  record Target(String name, String figure, double part) {}
}
