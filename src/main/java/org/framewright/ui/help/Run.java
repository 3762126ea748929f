package org.framewright.ui.help;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A stretch of text that looks the same from end to end.
 *
 * @param link the page that it leads to, as in {@code copies.md#decide}; empty if to none
 */
record Run(String text, Face face, String link) {
  /** How it looks. */
  enum Face {
    PLAIN,
    STRONG,
    EMPHASIS,
    CODE,
    /** As it is written on a key. */
    KEY
  }

  /** Whether it leads to another page. */
  boolean leads() {
    return !link.isEmpty();
  }

  /** The text alone. */
  static String plain(List<Run> runs) {
    return runs.stream().map(Run::text).collect(Collectors.joining());
  }
}
