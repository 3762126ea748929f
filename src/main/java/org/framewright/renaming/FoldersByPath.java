package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * Folders that are found by their paths anew for each rename: where the system has no better way,
 * and for the movers without the native call.
 */
record FoldersByPath(Disk disk, List<Path> folders) implements HeldFolders {
  @Override
  public MoveResult move(int in, Path from, int into, Path to) throws IOException {
    return disk.move(folders.get(in).resolve(from), folders.get(into).resolve(to));
  }

  @Override
  public void sync(int folder) throws IOException {
    disk.sync(folders.get(folder));
  }

  @Override
  public void close() {
    // Nothing is held.
  }
}
