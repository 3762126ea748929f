package org.framewright.renaming;

/** How far a long work is, and whether somebody wants it to stop. */
@FunctionalInterface
public interface Progress {
  /** Nobody looks and nobody stops it. */
  Progress NONE = (done, total) -> {};

  /**
   * Told now and then, on the thread that does the work.
   *
   * @param done steps done
   * @param total steps in all; the same at each call of one work
   */
  void step(int done, int total);

  /** Asked before each step; once true, what was done is rolled back. */
  default boolean cancelled() {
    return false;
  }
}
