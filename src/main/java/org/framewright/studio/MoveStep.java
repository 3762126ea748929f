package org.framewright.studio;

import java.time.Instant;
import java.util.Locale;
import java.util.UUID;

/**
 * What happened to a setup of a set that gives it.
 *
 * @param number from 1, over all moves of the setup
 * @param station the computer that did it
 * @param at when, by the server's clock
 * @param facts of the kind, as one object of JSON
 */
record MoveStep(int number, UUID move, Kind kind, String station, Instant at, String facts) {
  enum Kind {
    /** The set that has it will not shoot it any more. */
    GIVEN,
    /** The other set has it. */
    TAKEN,
    /** It stays where it was. */
    STAYS;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    static Kind of(String word) {
      return valueOf(word.toUpperCase(Locale.ROOT));
    }
  }
}
