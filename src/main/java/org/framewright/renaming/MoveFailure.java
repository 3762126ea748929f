package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;

/** A rename that the system refused: what it said in words, and its remedy. */
final class MoveFailure extends IOException {
  private static final long serialVersionUID = 1L;

  private final String remedy;

  MoveFailure(Path from, String why, String remedy) {
    super(from.getFileName() + ": " + why);
    this.remedy = remedy;
  }

  String remedy() {
    return remedy;
  }
}
