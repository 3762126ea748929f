package org.framewright.renaming;

import java.nio.file.Path;

/** The renames stopped before their end. */
final class Halt extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Path path;
  private final String mend;
  private final boolean cancelled;

  private Halt(Path path, String why, String mend, boolean cancelled) {
    super(why);
    this.path = path;
    this.mend = mend;
    this.cancelled = cancelled;
  }

  static Halt at(Path path, String why, String mend) {
    return new Halt(path, why, mend, false);
  }

  static Halt cancelled(Path path) {
    return new Halt(path, "cancelled", "", true);
  }

  Path path() {
    return path;
  }

  String mend() {
    return mend;
  }

  boolean isCancelled() {
    return cancelled;
  }
}
