package org.framewright.shotlist;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Where a setup stands. */
public enum SetupState {
  TO_SHOOT,
  ON_SET,
  SHOT,
  SIGNED_OFF,
  PICKUP,
  DROPPED;

  /** As commands and files write it: {@code to-shoot}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** As people read it: {@code to shoot}. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The state of this word or label, whatever its case; empty when there is none. */
  public static Optional<SetupState> of(String word) {
    var wanted = word.strip().toLowerCase(Locale.ROOT).replaceAll("[ _]+", "-");
    return Arrays.stream(values()).filter(state -> state.word().equals(wanted)).findFirst();
  }

  /** Whether nothing more is to be shot of it: shot, signed off or dropped. */
  public boolean done() {
    return this == SHOT || this == SIGNED_OFF || this == DROPPED;
  }
}
