package org.framewright.job;

import java.util.List;
import org.framewright.base.NameKey;

/**
 * The form of a list, by which the next one of it is known: its headings, whatever their case and
 * the space around them.
 */
record ListForm(List<String> headings) {
  ListForm {
    headings = List.copyOf(headings);
  }

  static ListForm of(List<String> headings) {
    return new ListForm(headings.stream().map(heading -> NameKey.of(heading.strip())).toList());
  }
}
