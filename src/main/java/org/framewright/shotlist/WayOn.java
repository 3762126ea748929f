package org.framewright.shotlist;

import org.framewright.base.Text;

/**
 * A way to read a list that could not be read as it is, for a person to choose.
 *
 * @param said what it does, in words: {@code one setup for each "Style", of its lines}
 * @param options what to read the list with
 */
public record WayOn(Text said, ListOptions options) {
  /** What it does, in English. */
  public String description() {
    return said.english();
  }
}
