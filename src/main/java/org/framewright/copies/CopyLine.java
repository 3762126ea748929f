package org.framewright.copies;

import java.nio.file.Path;
import org.framewright.base.Sha256;

/** Lines as {@code sha256sum} of GNU coreutils writes and checks them. */
final class CopyLine {
  private CopyLine() {}

  /** The line of a file, with the separators of every system but Windows. */
  static String of(String sha256, Path path) {
    return Sha256.sumLine(sha256, name(path));
  }

  /** A path with {@code /} between its names. */
  static String name(Path path) {
    var name = path.toString();
    return path.getFileSystem().getSeparator().equals("\\") ? name.replace('\\', '/') : name;
  }
}
