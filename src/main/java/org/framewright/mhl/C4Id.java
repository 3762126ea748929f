package org.framewright.mhl;

import java.math.BigInteger;
import java.util.Arrays;

/**
 * The digits of C4 (SMPTE ST 2114, as ASC MHL 1.0 describes it): {@code c4} and the SHA-512 as a
 * number to the base of 58 in 88 digits.
 */
final class C4Id {
  private static final String DIGITS = "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz";
  private static final BigInteger BASE = BigInteger.valueOf(DIGITS.length());
  private static final String START = "c4";
  private static final int LENGTH = 90;
  private static final int BYTES = 64;

  private C4Id() {}

  static String encoded(byte[] sha512) {
    var digits = new char[LENGTH];
    Arrays.fill(digits, DIGITS.charAt(0));
    START.getChars(0, START.length(), digits, 0);
    var rest = new BigInteger(1, sha512);
    for (int i = LENGTH - 1; rest.signum() > 0; i--) {
      var parts = rest.divideAndRemainder(BASE);
      digits[i] = DIGITS.charAt(parts[1].intValue());
      rest = parts[0];
    }
    return new String(digits);
  }

  /**
   * The SHA-512.
   *
   * @throws IllegalArgumentException if it is no C4
   */
  static byte[] decoded(String text) {
    if (text.length() != LENGTH || !text.startsWith(START)) {
      throw new IllegalArgumentException("not a C4");
    }
    var number = BigInteger.ZERO;
    for (int i = START.length(); i < LENGTH; i++) {
      int digit = DIGITS.indexOf(text.charAt(i));
      if (digit < 0) {
        throw new IllegalArgumentException("not a C4");
      }
      number = number.multiply(BASE).add(BigInteger.valueOf(digit));
    }
    if (number.bitLength() > BYTES * Byte.SIZE) {
      throw new IllegalArgumentException("not a C4");
    }
    var bytes = number.toByteArray();
    var value = new byte[BYTES];
    int length = Math.min(BYTES, bytes.length);
    System.arraycopy(bytes, bytes.length - length, value, BYTES - length, length);
    return value;
  }
}
