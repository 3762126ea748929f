package org.framewright.frames;

import java.time.Instant;
import java.util.Optional;

/**
 * A time in which a setup was on set.
 *
 * @param setup its code
 * @param view the view that was on set with it, if one was named
 * @param from its begin, counted in
 * @param until its end, not counted in; none while it lasts
 * @param shot when it was ticked shot, from when on nothing is on set and frames still fall to it
 * @param bySlate whether a slate put it there, and no person
 */
public record OnSetSpan(
    String setup,
    Optional<String> view,
    Instant from,
    Optional<Instant> until,
    Optional<Instant> shot,
    boolean bySlate) {

  /** One that a person put there, and that is not ticked shot. */
  public OnSetSpan(String setup, Optional<String> view, Instant from, Optional<Instant> until) {
    this(setup, view, from, until, Optional.empty(), false);
  }

  boolean contains(Instant time) {
    return !time.isBefore(from) && (until.isEmpty() || time.isBefore(until.get()));
  }
}
