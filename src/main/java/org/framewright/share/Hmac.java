package org.framewright.share;

import java.security.GeneralSecurityException;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** HMAC with SHA-256 (RFC 2104, RFC 4231). */
final class Hmac {
  private static final String ALGORITHM = "HmacSHA256";

  private Hmac() {}

  /** The MAC of the parts behind each other, 32 bytes. */
  static byte[] of(byte[] key, byte[]... parts) {
    try {
      var mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(key, ALGORITHM));
      for (var part : parts) {
        mac.update(part);
      }
      return mac.doFinal();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e); // Every Java has it (java.security.Provider, table).
    }
  }
}
