package org.framewright.share;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;

/** What an invitation's link brings to a device: 128 random bits. */
final class Secret {
  private static final String ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"; // RFC 4648, table 3
  private static final int BYTES = 16;

  private final byte[] bytes;

  Secret(byte[] bytes) {
    this.bytes = bytes.clone();
  }

  static Secret random(SecureRandom random) {
    var bytes = new byte[BYTES];
    random.nextBytes(bytes);
    return new Secret(bytes);
  }

  /** In 26 letters of base32 (RFC 4648, section 6) without what fills it up. */
  String text() {
    var text = new StringBuilder();
    int held = 0;
    int bits = 0;
    for (byte one : bytes) {
      held = held << 8 | (one & 0xFF);
      for (bits += 8; bits >= 5; bits -= 5) {
        text.append(ALPHABET.charAt(held >> (bits - 5) & 31));
      }
    }
    if (bits > 0) {
      text.append(ALPHABET.charAt(held << (5 - bits) & 31));
    }
    return text.toString();
  }

  /** The key that a device makes of it. */
  byte[] key(String device) {
    return Hmac.of(bytes, ("device " + device).getBytes(StandardCharsets.UTF_8));
  }
}
