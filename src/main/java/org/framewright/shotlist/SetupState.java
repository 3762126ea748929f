package org.framewright.shotlist;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Where a setup stands. */
public enum SetupState {
  TO_SHOOT,
  ON_SET,
  SHOT,
  SIGNED_OFF,
  PICKUP,
  DROPPED;

  private static final Pattern BETWEEN_WORDS = Pattern.compile("[ _]+");

  private final String word = name().toLowerCase(Locale.ROOT).replace('_', '-');

  /** As commands and files write it: {@code to-shoot}. */
  public String word() {
    return word;
  }

  /** As people read it: {@code to shoot}. */
  public String label() {
    return word.replace('-', ' ');
  }

  /** The state of this word or label, whatever its case; empty when there is none. */
  public static Optional<SetupState> of(String word) {
    return ofWord(word)
        .or(
            () -> {
              var lower = word.strip().toLowerCase(Locale.ROOT);
              return ofWord(BETWEEN_WORDS.matcher(lower).replaceAll("-"));
            });
  }

  private static Optional<SetupState> ofWord(String word) {
    return Arrays.stream(values()).filter(state -> state.word.equals(word)).findFirst();
  }

  /** Whether nothing more is to be shot of it: shot, signed off or dropped. */
  public boolean done() {
    return this == SHOT || this == SIGNED_OFF || this == DROPPED;
  }
}
