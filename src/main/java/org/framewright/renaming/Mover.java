package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;

/** The one call that changes a name, and never replaces a file. */
interface Mover {
  /**
   * Renames a file unless the new name is taken.
   *
   * @throws IOException if the system failed; the file may have either name
   */
  MoveResult move(Path from, Path to) throws IOException;

  Guarantee guarantee();
}
