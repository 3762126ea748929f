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
 */
public record OnSetSpan(
    String setup, Optional<String> view, Instant from, Optional<Instant> until) {

  boolean contains(Instant time) {
    return !time.isBefore(from) && (until.isEmpty() || time.isBefore(until.get()));
  }
}
