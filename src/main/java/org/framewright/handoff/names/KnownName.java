package org.framewright.handoff.names;

import java.util.Objects;

/**
 * A name that a frame has or had.
 *
 * @param frame which frame: its number in a list of the caller's
 * @param text the name without ending, with its folder before it where it lies in one ({@code
 *     A/IMG_0001})
 */
public record KnownName(int frame, String text, Kind kind) {
  public KnownName {
    Objects.requireNonNull(text);
    Objects.requireNonNull(kind);
  }

  /** Since when and for whom a frame has a name. */
  public enum Kind {
    /** The name it has. */
    NOW("its name"),
    /** A name it had before it was renamed. */
    BEFORE("its name before a rename"),
    /** The name under which it was handed off. */
    SELECT("its name as a select");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** In words: {@code its name before a rename}. */
    public String words() {
      return words;
    }
  }
}
