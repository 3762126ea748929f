package org.framewright.handoff.names;

/** What may be spent on a list in all, so that no list takes for ever. */
final class SearchBudget {
  private long left;

  SearchBudget(long all) {
    this.left = all;
  }

  /** Whether there is enough left; then it is spent. */
  boolean take(long some) {
    if (some > left) {
      left = 0;
      return false;
    }
    left -= some;
    return true;
  }
}
