package org.framewright.renaming;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;

/**
 * The folders that a batch works in, from before its first rename until behind its last; each is
 * given by its index in the batch.
 */
interface HeldFolders extends Closeable {
  /**
   * Renames a file unless the new name is taken.
   *
   * @throws IOException if the system failed; the file may have either name
   */
  MoveResult move(int in, Path from, int into, Path to) throws IOException;

  /** Returns once the names in this folder are on the disk. */
  void sync(int folder) throws IOException;

  @Override
  void close();
}
