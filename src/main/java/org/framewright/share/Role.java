package org.framewright.share;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a paired device may see and do. */
public enum Role {
  /** Sees the whole list, ticks every state but a sign-off, comments. */
  ASSISTANT,
  /** Sees what the client's window shows, signs off with a name, comments. */
  CLIENT,
  /** Sees how the day goes, and does nothing. */
  VIEWER;

  /** As commands and files write it: {@code assistant}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The role of this word, whatever its case; empty when there is none. */
  public static Optional<Role> of(String word) {
    return Arrays.stream(values())
        .filter(role -> role.word().equals(word.strip().toLowerCase(Locale.ROOT)))
        .findFirst();
  }

  /** The letter in a link, which lets the page show what it becomes before it is paired. */
  char letter() {
    return word().charAt(0);
  }
}
