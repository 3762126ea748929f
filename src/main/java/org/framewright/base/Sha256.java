package org.framewright.base;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), written as 64 lower-case hexadecimal digits. */
public final class Sha256 {
  private Sha256() {}

  /** One that nothing was given to. */
  public static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** What a digest came to; it begins anew. */
  public static String hex(MessageDigest digest) {
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The checksum of bytes. */
  public static String of(byte[] bytes) {
    return HexFormat.of().formatHex(digest().digest(bytes));
  }

  /**
   * A line for {@code sha256sum -c}. Source: GNU coreutils manual, "md5sum invocation": a name with
   * a backslash, line feed or carriage return is escaped, and the line then begins with a
   * backslash.
   */
  public static String sumLine(String checksum, String name) {
    var escaped = name.replace("\\", "\\\\").replace("\n", "\\n").replace("\r", "\\r");
    return (escaped.equals(name) ? "" : "\\") + checksum + "  " + escaped + "\n";
  }
}
