package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The one call that changes a name, and never replaces a file. */
interface Mover {
  /**
   * Renames a file unless the new name is taken.
   *
   * @throws IOException if the system failed; the file may have either name
   */
  MoveResult move(Path from, Path to) throws IOException;

  Guarantee guarantee();

  /**
   * Holds the folders of a batch, if this way to rename can.
   *
   * @param root a real path, that of a folder which all lie in or below
   * @throws MoveFailure if a folder cannot be opened, or is none any more
   */
  default Optional<HeldFolders> hold(Path root, List<Path> folders) throws MoveFailure {
    return Optional.empty();
  }
}
