package org.framewright.renaming;

/** Where a batch stands. */
public enum BatchState {
  /** Begun and not ended: running now, or interrupted. */
  OPEN("open"),
  /** Every file of it got its new name. */
  DONE("done"),
  /** Every file of it has its old name. */
  ROLLED_BACK("rolled back"),
  /** A person closed it with files left where they were. */
  STUCK("stuck"),
  /** Its journal is damaged. */
  UNREADABLE("unreadable");

  private final String label;

  BatchState(String label) {
    this.label = label;
  }

  /** In words. */
  public String label() {
    return label;
  }
}
