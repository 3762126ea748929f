package org.framewright.job;

/** A wish that cannot be met, or a folder that cannot be read: what, where, and what mends it. */
public final class JobException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String what;
  private final String where;
  private final String mend;

  /**
   * @param where a file, a line, a setup; empty where the message says it
   * @param mend what would mend it; may be empty
   */
  public JobException(String what, String where, String mend) {
    super(where.isEmpty() ? what : where + ": " + what);
    this.what = what;
    this.where = where;
    this.mend = mend;
  }

  public String what() {
    return what;
  }

  public String where() {
    return where;
  }

  public String mend() {
    return mend;
  }
}
