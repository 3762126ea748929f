package org.framewright.renaming;

import java.util.Locale;

/** How one rename of a plan stands. */
public enum Status {
  /** It can be done. */
  READY,
  /** The file has this name already. */
  UNCHANGED,
  /** It cannot be done; the rename says why and its remedy. */
  BLOCKED,
  /** It was done. */
  DONE,
  /** It was left out, because the file is no longer as the journal knew it. */
  SKIPPED;

  /** The word of tables and JSON: {@code ready}, {@code unchanged}, ... */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
