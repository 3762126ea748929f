package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/** What the system knows of the links of a file. */
final class Links {
  private Links() {}

  /**
   * Whether these are two links of one file, so that removing one leaves the other. No where the
   * system does not say.
   */
  static boolean areOneFile(Path a, Path b) throws IOException {
    if (!a.getFileSystem().supportedFileAttributeViews().contains("unix")) {
      return false;
    }
    var first = Files.readAttributes(a, "unix:ino,dev,nlink", LinkOption.NOFOLLOW_LINKS);
    var second = Files.readAttributes(b, "unix:ino,dev,nlink", LinkOption.NOFOLLOW_LINKS);
    return first.equals(second) && (int) first.get("nlink") >= 2;
  }
}
