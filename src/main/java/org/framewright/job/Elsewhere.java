package org.framewright.job;

import java.time.Instant;
import java.util.Optional;

/**
 * What another station did to the list.
 *
 * @param station the station's name
 * @param called what people call it; empty where nobody said
 * @param at when, by the job's time
 * @param tick the tick; empty where the list itself was changed, or a tick was taken back
 */
public record Elsewhere(String station, Optional<String> called, Instant at, Optional<Tick> tick) {
  static boolean concerns(Event event) {
    return event instanceof Event.Marked
        || event instanceof Event.TakenBack
        || event instanceof Event.ListChanged
        || event instanceof Event.Given
        || event instanceof Event.Taken
        || (event instanceof Event.GiveEnded(_, var arrived) && !arrived);
  }

  static Elsewhere of(Entry entry) {
    var at = entry.time();
    return new Elsewhere(
        entry.stamp().station(),
        Optional.empty(),
        at,
        entry.event() instanceof Event.Marked marked
            ? Optional.of(new Tick(marked.setup(), marked.state(), marked.details(), at))
            : Optional.empty());
  }

  Elsewhere called(Optional<String> name) {
    return new Elsewhere(station, name, at, tick);
  }
}
