package org.framewright.ui.day;

import java.util.Locale;
import java.util.Optional;

/**
 * Something to look at before one wraps.
 *
 * @param id says all that was seen: where something else is so, it is another line
 * @param what in a sentence
 * @param more what else helps; may be empty
 * @param way where one goes about it; none where nothing is to be done
 * @param looked whether a person ticked it
 */
record LookLine(
    String id, Group group, String what, String more, Optional<Way> way, boolean looked) {
  /** How much it asks for. */
  enum Group {
    /** Somebody has to act. */
    NEEDS,
    /** Somebody has to judge. */
    JUDGE,
    /** All is well. */
    FINE;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  LookLine looked(boolean now) {
    return new LookLine(id, group, what, more, way, now);
  }
}
