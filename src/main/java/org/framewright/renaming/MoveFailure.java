package org.framewright.renaming;

import java.nio.file.Path;
import org.framewright.base.Problem;

/** A rename that the system refused. */
final class MoveFailure extends RenamingFailure {
  private static final long serialVersionUID = 1L;

  MoveFailure(Path from, String why, String remedy) {
    super(new Problem(from.getFileName() + ": " + why, remedy));
  }
}
