package org.framewright.handoff.metadata;

import java.util.Optional;

/** Product numbers: GS1 General Specifications, section 7.9, check digit calculation. */
final class Gtin {
  private Gtin() {}

  /** A number of 8, 12, 13 or 14 digits in 14; empty where it is none, or its check digit wrong. */
  static Optional<String> of14(String written) {
    var digits = written.replaceAll("[\\s-]", "");
    if (!digits.matches("[0-9]{8}|[0-9]{12,14}")) {
      return Optional.empty();
    }
    int sum = 0;
    for (int i = 0; i < digits.length(); i++) {
      int fromTheRight = digits.length() - 1 - i;
      sum += (digits.charAt(i) - '0') * (fromTheRight % 2 == 0 ? 1 : 3);
    }
    return sum % 10 == 0
        ? Optional.of("0".repeat(14 - digits.length()) + digits)
        : Optional.empty();
  }
}
