package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;

/** A rename that the system refused: what it said in words, and what would mend it. */
final class MoveFailure extends IOException {
  private static final long serialVersionUID = 1L;

  private final String mend;

  MoveFailure(Path from, String why, String mend) {
    super(from.getFileName() + ": " + why);
    this.mend = mend;
  }

  String mend() {
    return mend;
  }
}
