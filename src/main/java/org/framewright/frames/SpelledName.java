package org.framewright.frames;

import java.nio.file.Path;

/**
 * The names of files, compared byte by byte. Linux allows names that are no text in the system's
 * encoding; Java keeps their bytes inside the path but shows each of them as U+FFFD, so that two
 * such names look like one. Only the path's URI gives the bytes out.
 */
final class SpelledName {
  private static final char UNREADABLE = '\uFFFD';

  private SpelledName() {}

  /** Whether the text of a path says all of it. */
  static boolean isText(Path path) {
    return path.toString().indexOf(UNREADABLE) < 0;
  }

  /**
   * The name of a file: its text; of one that is no text, its bytes as in a URI, behind a mark that
   * no other name begins with. Two files of one folder never share it.
   */
  static String of(Path file) {
    var name = file.getFileName();
    return isText(name) ? name.toString() : UNREADABLE + bytes(name);
  }

  /** A path to show: bytes that are no text as in a URI, {@code IMG_%E9.jpg}. */
  static String shown(Path path) {
    if (isText(path)) {
      return path.toString();
    }
    var name = path.getFileName();
    var parent = path.getParent();
    var last = name == null || isText(name) ? String.valueOf(name) : bytes(name);
    return parent == null || parent.getNameCount() == 0
        ? path.toString().replace(String.valueOf(name), last)
        : shown(parent) + path.getFileSystem().getSeparator() + last;
  }

  private static String bytes(Path name) {
    var uri = name.toAbsolutePath().toUri().getRawPath();
    var raw = uri.endsWith("/") ? uri.substring(0, uri.length() - 1) : uri;
    return raw.substring(raw.lastIndexOf('/') + 1);
  }
}
