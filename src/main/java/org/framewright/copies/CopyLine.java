package org.framewright.copies;

import java.nio.file.Path;

/** Lines as {@code sha256sum} of GNU coreutils writes and checks them. */
final class CopyLine {
  private CopyLine() {}

  /**
   * A line. Source: GNU coreutils manual, "md5sum invocation": a name with a backslash, line feed
   * or carriage return is escaped, and the line then begins with a backslash.
   */
  static String of(String sha256, Path path) {
    var name = path.toString();
    if (path.getFileSystem().getSeparator().equals("\\")) {
      name = name.replace('\\', '/');
    }
    var escaped = name.replace("\\", "\\\\").replace("\n", "\\n").replace("\r", "\\r");
    return (escaped.equals(name) ? "" : "\\") + sha256 + "  " + escaped + "\n";
  }
}
