package org.framewright.copies;

import java.nio.file.Path;
import org.framewright.base.Sha256;

/** Lines as {@code sha256sum} of GNU coreutils writes and checks them. */
final class CopyLine {
  private CopyLine() {}

  /** The line of a file, with the separators of every system but Windows. */
  static String of(String sha256, Path path) {
    var name = path.toString();
    if (path.getFileSystem().getSeparator().equals("\\")) {
      name = name.replace('\\', '/');
    }
    return Sha256.sumLine(sha256, name);
  }
}
