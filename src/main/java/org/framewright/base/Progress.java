package org.framewright.base;

/** How far a long work is, and whether somebody wants it to stop. */
@FunctionalInterface
public interface Progress {
  /** Nobody looks and nobody stops it. */
  Progress NONE = (_, _) -> {};

  /**
   * Reports how far the work is, now and then, on whichever thread does it.
   *
   * @param done steps done
   * @param total steps in all; the same at each call of one work
   */
  void step(int done, int total);

  /** Asked before each step; once true, no further step is taken. */
  default boolean cancelled() {
    return false;
  }
}
