package org.framewright.base;

import java.util.function.BooleanSupplier;

/** How far a long work is, and whether somebody wants it to stop. */
@FunctionalInterface
public interface Progress {
  /** Nobody looks and nobody stops it. */
  Progress NONE = (_, _) -> {};

  /** Tells nobody how far it is, and stops when it is asked to. */
  static Progress until(BooleanSupplier cancelled) {
    return new Progress() {
      @Override
      public void step(int done, int total) {}

      @Override
      public boolean cancelled() {
        return cancelled.getAsBoolean();
      }
    };
  }

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
