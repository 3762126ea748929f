package org.framewright.naming;

import java.util.Map;

/** Gives out the numbers of a kind's counter, never one that exists. Not for several threads. */
public interface Numbering {
  /**
   * The next number of the run that the values lie in: one more than the largest that exists or was
   * given out, else the counter's start.
   *
   * @param values the other fields' values; those on which the counter restarts decide the run
   */
  long next(Map<String, String> values);
}
