package org.framewright.naming;

import java.util.Locale;

/** How much a finding matters. */
public enum Severity {
  /** The convention, or the value, must not be used like this. */
  ERROR,
  /** It works, and will trouble somebody. */
  WARNING,
  /** Worth knowing. */
  NOTE;

  /** The word for reports: {@code error}, {@code warning}, {@code note}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
