package org.framewright.renaming;

import org.framewright.base.Text;

/** Where a batch stands. */
public enum BatchState {
  /** Begun and not ended: running now, or interrupted. */
  OPEN(Text.of("open")),
  /** Every file of it got its new name. */
  DONE(Text.of("done")),
  /** Every file of it has its old name. */
  ROLLED_BACK(Text.of("rolled back")),
  /** A person closed it with files left where they were. */
  STUCK(Text.of("stuck")),
  /** Its journal is damaged. */
  UNREADABLE(Text.of("unreadable"));

  private final Text said;

  BatchState(Text said) {
    this.said = said;
  }

  /** In words. */
  Text said() {
    return said;
  }

  /** In English words. */
  public String label() {
    return said.english();
  }
}
