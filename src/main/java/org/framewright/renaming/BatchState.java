package org.framewright.renaming;

import org.framewright.base.Text;

/** Where a batch stands. */
public enum BatchState {
  /** Begun and not ended: running now, or interrupted. */
  OPEN,
  /** Every file of it got its new name. */
  DONE,
  /** Every file of it has its old name. */
  ROLLED_BACK,
  /** A person closed it with files left where they were. */
  STUCK,
  /** Its journal is damaged. */
  UNREADABLE;

  /** In words. */
  Text said() {
    return switch (this) {
      case OPEN -> Text.of("open");
      case DONE -> Text.of("done");
      case ROLLED_BACK -> Text.of("rolled back");
      case STUCK -> Text.of("stuck");
      case UNREADABLE -> Text.of("unreadable");
    };
  }

  /** In English words. */
  public String label() {
    return said().english();
  }
}
