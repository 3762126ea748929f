package org.framewright.renaming;

import org.framewright.base.Text;

/** By which call names are changed on a volume, and what that call promises. */
public enum Guarantee {
  /** The system's own rename that never replaces. */
  NATIVE,
  /** A second link to the file, then the first one removed. */
  LINKED,
  /** The target reserved with a marked file of our own, which the rename then replaces. */
  RESERVED;

  /** The promise in a sentence. */
  public Text said() {
    return switch (this) {
      case NATIVE -> Text.of("No file can be overwritten, whatever other programs do.");
      case LINKED ->
          Text.of(
              "No file can be overwritten; while a batch runs, no other program should replace a"
                  + " file that is being renamed.");
      case RESERVED ->
          Text.of(
              "This volume has no rename that refuses to replace: while a batch runs, no other"
                  + " program may write to these folders.");
    };
  }

  /** The same in English. */
  public String words() {
    return said().english();
  }

  /** Whether a person should know of it. */
  public boolean reduced() {
    return this != NATIVE;
  }
}
