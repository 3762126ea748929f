package org.framewright.copies;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;

/**
 * A folder on a disk that may be pulled out: what it was mounted on is a folder too, empty, on
 * another disk, and of the same name.
 */
final class SameFolder {
  private final Path folder;

  /** The system's number for it; null where it has none. */
  private final Object key;

  private SameFolder(Path folder, Object key) {
    this.folder = folder;
    this.key = key;
  }

  /** The folder of this path as it is now. */
  static SameFolder of(Path folder) throws IOException {
    return new SameFolder(folder, key(folder));
  }

  private static Object key(Path folder) throws IOException {
    var attributes = Files.readAttributes(folder, BasicFileAttributes.class);
    if (!attributes.isDirectory()) {
      throw new FileSystemException(folder.toString(), null, "Not a directory");
    }
    return attributes.fileKey();
  }

  /** Whether its path still leads to it. */
  boolean isThere() {
    try {
      return Objects.equals(key, key(folder));
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Goes on only where its path still leads to it.
   *
   * @throws FileSystemException if its disk is gone
   */
  void require() throws FileSystemException {
    if (!isThere()) {
      throw gone();
    }
  }

  /** What to say where its disk is gone. */
  FileSystemException gone() {
    return new FileSystemException(folder.toString(), null, "No such device");
  }
}
