package org.framewright.copies;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4). */
final class Hashing {
  private Hashing() {}

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  static String sha256(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
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
}
