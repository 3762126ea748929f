package org.framewright.studio;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * One set in the overview.
 *
 * @param name of its job
 * @param now how it stood when one of its computers told that last; nothing where none did yet
 * @param toldBy the station that told it
 * @param toldAt when, by the server's clock
 * @param behind how many events the store got since that are not in it
 * @param heard when the store got an event of it last, by the server's clock
 * @param asked when this was read, by the server's clock
 */
public record SetRow(
    UUID job,
    String name,
    Optional<SetNow> now,
    Optional<String> toldBy,
    Optional<Instant> toldAt,
    long behind,
    Optional<Instant> heard,
    Instant asked) {

  /** A set of which nothing was heard for so long is not followed by any computer just now. */
  static final Duration SILENCE = Duration.ofMinutes(5);

  /** What needs a person first, in this order. */
  public enum Need {
    /** Something stops work, or loses it. */
    URGENT,
    /** A setup waits for its sign-off. */
    SIGN_OFF,
    /** A setup is to be shot again. */
    PICKUP,
    /** What is planned for today will not be done today. */
    LATE,
    /** Something is to be looked at. */
    TROUBLE,
    /** Setups are left, and no computer tells of the set. */
    SILENT,
    /** Nothing needs a person. */
    NOTHING
  }

  /** What of this set needs a person first. */
  public Need need() {
    if (now.isEmpty()) {
      return Need.SILENT;
    }
    var set = now.get();
    if (!set.urgent().isEmpty()) {
      return Need.URGENT;
    }
    if (!set.waiting().isEmpty()) {
      return Need.SIGN_OFF;
    }
    if (set.pickups() > 0) {
      return Need.PICKUP;
    }
    if (set.late()) {
      return Need.LATE;
    }
    if (!set.troubles().isEmpty()) {
      return Need.TROUBLE;
    }
    return set.done() < set.planned() && isSilent() ? Need.SILENT : Need.NOTHING;
  }

  /** Whether no computer told of this set lately. */
  public boolean isSilent() {
    return toldAt.map(at -> at.plus(SILENCE).isBefore(asked)).orElse(true);
  }
}
