package org.framewright.naming;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Product numbers (GS1 General Specifications: from the right the digits before the check digit
 * weigh 3, 1, 3 ...; the check digit makes the sum a multiple of ten).
 */
public final class Gtin {
  private static final int LONGEST = 14;
  private static final Pattern NUMBER = Pattern.compile("[0-9]{8}|[0-9]{12,14}");

  private Gtin() {}

  /**
   * The 8, 12, 13 or 14 digits of a number, whose check digit may be wrong; empty if it is none.
   */
  static Optional<String> digits(String written) {
    return Optional.of(written.replaceAll("[\\s-]", ""))
        .filter(digits -> NUMBER.matcher(digits).matches());
  }

  /** A number in 14 digits; empty where it is none, or its check digit wrong. */
  public static Optional<String> of14(String written) {
    return digits(written)
        .filter(Gtin::isRight)
        .map(digits -> "0".repeat(LONGEST - digits.length()) + digits);
  }

  private static boolean isRight(String digits) {
    int last = digits.length() - 1;
    return digits.charAt(last) - '0' == checkDigit(digits.substring(0, last));
  }

  /** The check digit that belongs after these digits. */
  static int checkDigit(String withoutIt) {
    int sum = 0;
    for (int i = 0; i < withoutIt.length(); i++) {
      sum += (withoutIt.charAt(i) - '0') * weight(withoutIt.length() - i);
    }
    return (10 - sum % 10) % 10;
  }

  static int weight(int fromTheRight) {
    return fromTheRight % 2 == 0 ? 1 : 3;
  }
}
