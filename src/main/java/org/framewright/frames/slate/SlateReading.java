package org.framewright.frames.slate;

import org.framewright.base.Text;

/** What looking for a slate in a frame came to. */
public sealed interface SlateReading {
  /** There is one, and no other. */
  record Found(Slate slate) implements SlateReading {}

  /**
   * There are two that say different things, as where one is held before another: neither counts.
   */
  record Two(Slate one, Slate other) implements SlateReading {}

  /** There is none, or none that is sure. */
  record None() implements SlateReading {}

  /** There was nothing to look at. */
  record NoPicture(Text why) implements SlateReading {}
}
