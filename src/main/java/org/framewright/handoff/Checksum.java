package org.framewright.handoff;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4) of files, and the lines in which two public formats write it. */
final class Checksum {
  private static final int PIECE = 1 << 18;

  private Checksum() {}

  static String of(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  static String of(Path file) throws IOException {
    var digest = sha256();
    try (InputStream in = Files.newInputStream(file)) {
      var piece = new byte[PIECE];
      for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
        digest.update(piece, 0, read);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /**
   * Copies a file to a new one, flushes it to the disk, and tells the checksum of what was read.
   */
  static String copy(Path from, Path to) throws IOException {
    var digest = sha256();
    try (var in = FileChannel.open(from, StandardOpenOption.READ);
        var out = FileChannel.open(to, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      var piece = ByteBuffer.allocate(PIECE);
      while (in.read(piece) >= 0) {
        piece.flip();
        digest.update(piece.duplicate());
        while (piece.hasRemaining()) {
          out.write(piece);
        }
        piece.clear();
      }
      out.force(true);
    }
    Files.setLastModifiedTime(to, Files.getLastModifiedTime(from));
    return HexFormat.of().formatHex(digest.digest());
  }

  /**
   * A line for {@code sha256sum -c}. Source: GNU coreutils manual, "md5sum invocation": a name with
   * a backslash, line feed or carriage return is escaped, and the line then begins with a
   * backslash.
   */
  static String sumLine(String checksum, String name) {
    var escaped = name.replace("\\", "\\\\").replace("\n", "\\n").replace("\r", "\\r");
    return (escaped.equals(name) ? "" : "\\") + checksum + "  " + escaped + "\n";
  }

  /**
   * A manifest line of RFC 8493, section 2.1.3: only line feed, carriage return and % are coded.
   */
  static String bagLine(String checksum, String name) {
    return checksum
        + "  "
        + name.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D")
        + "\n";
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java runtime has SHA-256", e);
    }
  }
}
