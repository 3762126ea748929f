package org.framewright.job;

import java.util.Map;
import java.util.Optional;

/**
 * What the events of a job say of the checks before the first frame and after the last.
 *
 * @param ticks the items that are ticked, each with its last tick
 * @param morning the last answer before the first frame
 * @param evening the last answer after the last
 */
public record Readiness(
    Map<String, ItemTick> ticks, Optional<ReadyAt> morning, Optional<ReadyAt> evening) {
  public Readiness {
    ticks = Map.copyOf(ticks);
  }

  /** The last answer of the morning, or of the evening. */
  public Optional<ReadyAt> said(boolean wrap) {
    return wrap ? evening : morning;
  }
}
