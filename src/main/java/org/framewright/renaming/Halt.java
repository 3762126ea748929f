package org.framewright.renaming;

import java.nio.file.Path;

/** The renames stopped before their end. */
final class Halt extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Path path;
  private final String remedy;
  private final boolean cancelled;

  private Halt(Path path, String why, String remedy, boolean cancelled) {
    super(why);
    this.path = path;
    this.remedy = remedy;
    this.cancelled = cancelled;
  }

  static Halt at(Path path, String why, String remedy) {
    return new Halt(path, why, remedy, false);
  }

  static Halt cancelled(Path path) {
    return new Halt(path, "cancelled", "", true);
  }

  Path path() {
    return path;
  }

  String remedy() {
    return remedy;
  }

  boolean isCancelled() {
    return cancelled;
  }
}
