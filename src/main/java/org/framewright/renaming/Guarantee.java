package org.framewright.renaming;

/** By which call names are changed on a volume, and what that call promises. */
public enum Guarantee {
  /** The system's own rename that never replaces. */
  NATIVE("No file can be overwritten, whatever other programs do."),
  /** A second link to the file, then the first one removed. */
  LINKED(
      "No file can be overwritten; while a batch runs, no other program should replace a file that"
          + " is being renamed."),
  /** The target reserved with a marked file of our own, which the rename then replaces. */
  RESERVED(
      "This volume has no rename that refuses to replace: while a batch runs, no other program may"
          + " write to these folders.");

  private final String words;

  Guarantee(String words) {
    this.words = words;
  }

  /** The promise in a sentence. */
  public String words() {
    return words;
  }

  /** Whether a person should know of it. */
  public boolean reduced() {
    return this != NATIVE;
  }
}
