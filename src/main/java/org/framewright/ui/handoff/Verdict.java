package org.framewright.ui.handoff;

import java.util.Locale;

/** What is said of a package so large that it is read from a metre away. */
enum Verdict {
  WHOLE,
  NOT_WHOLE,
  /** There is no package, or nobody knows. */
  NONE,
  UNKNOWN;

  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
