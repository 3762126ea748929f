package org.framewright.handoff.verify;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/** What people wrote of a bag, RFC 8493, section 2.2.2, as far as it can be checked. */
final class BagInfo {
  /** Its name, and that of the drafts before 0.96. */
  static final List<String> FILES = List.of("bag-info.txt", "package-info.txt");

  /** The label of the payload's bytes and files. */
  static final String SUM = "Payload-Oxum";

  private static final Pattern NUMBERS = Pattern.compile("(0|[1-9]\\d{0,17})\\.(0|[1-9]\\d{0,17})");

  private BagInfo() {}

  /**
   * The bytes and the files that the payload should have, as {@code 279164409832.1198}.
   *
   * @param file what to call the text
   */
  static Optional<String> payloadSum(
      TextLines lines, String file, boolean strict, Findings findings) {
    Optional<String> sum = Optional.empty();
    boolean begun = false;
    for (var line : lines) {
      var where = file + ", line " + line.number();
      var text = line.text();
      if (text.isBlank() || (begun && isBlank(text.charAt(0)))) {
        continue; // What goes on from the line before is no sum.
      }
      begun = true;
      int colon = text.indexOf(':');
      if (colon <= 0 || (strict && !isStrict(text, colon))) {
        var what = Text.of("this line is not a label, a colon, a space and a value");
        if (strict) {
          findings.fault(what, where);
        } else {
          findings.warn(what, where);
        }
        continue;
      }
      if (text.substring(0, colon).strip().equalsIgnoreCase(SUM)) {
        var value = text.substring(colon + 1).strip();
        boolean again = sum.isPresent() && (strict || !sum.get().equals(value));
        if (!NUMBERS.matcher(value).matches()) {
          findings.fault(Text.of("{0} is two numbers with a dot between them", SUM), where);
        } else if (again) {
          findings.fault(Text.of("{0} is there twice", SUM), where);
        } else {
          sum = Optional.of(value);
        }
      }
    }
    return sum;
  }

  private static boolean isStrict(String text, int colon) {
    return !isBlank(text.charAt(0))
        && !isBlank(text.charAt(colon - 1))
        && colon + 1 < text.length()
        && isBlank(text.charAt(colon + 1));
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t';
  }
}
