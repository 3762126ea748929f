package org.framewright.handoff;

import java.util.List;

/**
 * What would be handed off; nothing has been written.
 *
 * @param chosenBy how they were chosen, such as {@code rated 4 or higher}
 * @param selects those that can go, by name
 * @param withheld those that cannot, and why
 */
public record HandOffPlan(String chosenBy, List<Select> selects, List<Withheld> withheld) {
  public HandOffPlan {
    selects = List.copyOf(selects);
    withheld = List.copyOf(withheld);
  }

  /** The number of files that would be copied. */
  public int files() {
    return selects.stream().mapToInt(select -> select.files().size()).sum();
  }

  /** Their size in bytes. */
  public long bytes() {
    return selects.stream().mapToLong(Select::bytes).sum();
  }
}
