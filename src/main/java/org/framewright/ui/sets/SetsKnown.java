package org.framewright.ui.sets;

import java.time.Instant;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.studio.OverviewFollower.Heard;

/**
 * What is known of the sets.
 *
 * @param hasStore whether this computer goes by a store; nothing until it was looked
 * @param sets as they were answered last
 * @param answered when that was
 * @param away why they may be others by now
 */
record SetsKnown(
    Optional<Boolean> hasStore,
    Optional<Heard.Sets> sets,
    Optional<Instant> answered,
    Optional<Away> away) {

  /** The store is not at hand. */
  record Away(Problem why, Instant since) {}

  /** Before anything was heard. */
  static final SetsKnown NOTHING =
      new SetsKnown(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

  /** With what was heard at a time; what was known stays where the store is away. */
  SetsKnown after(Heard heard, Instant at) {
    return switch (heard) {
      case Heard.NoStore _ ->
          new SetsKnown(Optional.of(false), Optional.empty(), Optional.empty(), Optional.empty());
      case Heard.Sets all ->
          new SetsKnown(Optional.of(true), Optional.of(all), Optional.of(at), Optional.empty());
      case Heard.Away(var why) ->
          new SetsKnown(
              Optional.of(true),
              sets,
              answered,
              Optional.of(new Away(why, away.map(Away::since).orElse(at))));
    };
  }
}
