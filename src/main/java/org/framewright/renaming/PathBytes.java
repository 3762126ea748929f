package org.framewright.renaming;

import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HexFormat;

/**
 * The bytes of a path, also of one that is not valid text. Java keeps such bytes inside the path
 * and shows them as U+FFFD; only the path's URI gives them out and takes them back.
 */
final class PathBytes {
  private static final char UNREADABLE = '\uFFFD';
  private static final Charset CHARSET =
      Charset.forName(System.getProperty("sun.jnu.encoding", "UTF-8"));

  private PathBytes() {}

  /** Whether the path's text is all of it. */
  static boolean isText(Path path) {
    return path.toString().indexOf(UNREADABLE) < 0;
  }

  /** Whether two paths have the same spelling, which on Windows is more than to be equal. */
  static boolean same(Path a, Path b) {
    return a.equals(b) && a.toString().equals(b.toString());
  }

  /**
   * Text that is the same for the same spelling only. Paths themselves do not do for that: on
   * Windows they are equal if they differ in case.
   */
  static String exact(Path path) {
    return isText(path) ? path.toString() : "bytes " + Base64.getEncoder().encodeToString(of(path));
  }

  static byte[] of(Path path) {
    return isText(path) ? path.toString().getBytes(CHARSET) : decoded(rawPath(path));
  }

  /** The bytes of one name. */
  static byte[] ofName(Path name) {
    if (isText(name)) {
      return of(name);
    }
    var raw = rawPath(name.toAbsolutePath());
    return decoded(raw.substring(raw.lastIndexOf('/') + 1));
  }

  /**
   * A name of these bytes.
   *
   * @throws IllegalArgumentException if they are no name
   */
  static Path name(byte[] bytes) {
    var escaped = HexFormat.ofDelimiter("%").withPrefix("").formatHex(bytes);
    var path = Path.of(URI.create("file:///%" + escaped));
    if (path.getNameCount() != 1) {
      throw new IllegalArgumentException("not one name");
    }
    return path.getFileName();
  }

  private static String rawPath(Path path) {
    var raw = path.toUri().getRawPath();
    return raw.length() > 1 && raw.endsWith("/") ? raw.substring(0, raw.length() - 1) : raw;
  }

  private static byte[] decoded(String raw) {
    var bytes = new ByteArrayOutputStream(raw.length());
    for (int i = 0; i < raw.length(); i++) {
      if (raw.charAt(i) == '%') {
        bytes.write(Integer.parseInt(raw, i + 1, i + 3, 16));
        i += 2;
      } else {
        bytes.write(raw.charAt(i));
      }
    }
    return bytes.toByteArray();
  }
}
