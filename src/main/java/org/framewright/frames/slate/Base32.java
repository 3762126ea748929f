package org.framewright.frames.slate;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import org.framewright.base.Sha256;

/**
 * Bits as digits and letters of Crockford's base 32, which has no I, L, O and U: nothing that is
 * taken for something else when it is read from paper.
 */
final class Base32 {
  static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

  private static final int BITS = 5;
  private static final int MASK = (1 << BITS) - 1;

  /** A long holds no more. */
  private static final int MOST_DIGITS = Long.SIZE / BITS;

  private Base32() {}

  /** The lowest bits of a number, the highest of them first. */
  static String digits(long number, int digits) {
    var text = new StringBuilder(digits);
    for (int i = digits - 1; i >= 0; i--) {
      text.append(ALPHABET.charAt((int) (number >>> (BITS * i)) & MASK));
    }
    return text.toString();
  }

  /** The first bits of the SHA-256 of a text in UTF-8. */
  static String ofHash(String text, int digits) {
    if (digits > MOST_DIGITS) {
      throw new IllegalArgumentException(digits + " digits of a hash");
    }
    MessageDigest digest = Sha256.digest();
    var hash = digest.digest(text.getBytes(StandardCharsets.UTF_8));
    long first = 0;
    for (int i = 0; i < Long.BYTES; i++) {
      first = (first << Byte.SIZE) | (hash[i] & 0xFF);
    }
    return digits(first >>> (Long.SIZE - BITS * digits), digits);
  }

  /** Whether a text is of the alphabet only. */
  static boolean holds(String text) {
    return text.chars().allMatch(c -> ALPHABET.indexOf(c) >= 0);
  }
}
