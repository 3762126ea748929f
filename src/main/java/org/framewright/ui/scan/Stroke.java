package org.framewright.ui.scan;

/**
 * What was done to a key.
 *
 * @param kind pressed, let go, or that it wrote something
 * @param role what the key is for
 * @param key which key it is; the same where it is pressed and let go
 * @param text what was written; empty for the other kinds
 * @param event what is sent on if it was typing
 */
record Stroke<E>(Kind kind, Role role, String key, String text, E event) {
  /** What happened. */
  enum Kind {
    PRESSED,
    TYPED,
    RELEASED
  }

  /** What a key is for. */
  enum Role {
    /** It writes a character. */
    WRITES,
    /** It ends what was scanned. */
    ENDS,
    /** It stands between elements of a scanned symbol; people use it for other things. */
    SEPARATES,
    /** It changes what the others write. */
    SHIFTS,
    /** No scanner presses it. */
    OTHER
  }
}
