package org.framewright.job;

import org.framewright.base.Problem;

/** What the next frame of a setup is to be called. */
public sealed interface NextName {
  /**
   * It can be said.
   *
   * @param stem the name without an ending
   */
  record Known(String stem) implements NextName {}

  /** It cannot be said, and why. */
  record Unknown(Problem problem) implements NextName {}
}
