package org.framewright.handoff.verify;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A line of a list of checksums.
 *
 * @param sum in small letters
 * @param path as it is written, without what programs for checksums put before it
 * @param marked whether an asterisk or {@code ./} stood before the path
 */
record SumLine(String sum, String path, boolean marked) {
  private static final int FEWEST_DIGITS = 8;
  private static final List<String> HERE = List.of("./", ".\\");

  /**
   * A line of a manifest, RFC 8493, section 2.1.3.
   *
   * @param kind where it is known
   */
  static Optional<SumLine> ofManifest(String line, Optional<Algorithm> kind) {
    int digits = digits(line);
    int from = digits;
    while (from < line.length() && isBlank(line.charAt(from))) {
      from++;
    }
    boolean fits = kind.isPresent() ? digits == kind.get().digits() : digits >= FEWEST_DIGITS;
    if (!fits || from == digits) {
      return Optional.empty();
    }
    boolean marked = from < line.length() && line.charAt(from) == '*';
    return of(line.substring(0, digits), line.substring(marked ? from + 1 : from), marked);
  }

  /**
   * A line that GNU's programs for checksums or those of BSD write. Source: GNU coreutils manual,
   * "md5sum invocation": a space or an asterisk before the name, a backslash before the line where
   * the name has one, or a line end.
   */
  static Optional<SumLine> ofList(String line, Algorithm kind) {
    boolean escaped = line.startsWith("\\");
    var text = escaped ? line.substring(1) : line;
    int digits = digits(text);
    if (digits != kind.digits()) {
      return ofBsd(text, kind, escaped);
    }
    if (digits + 1 >= text.length() || !isBlank(text.charAt(digits))) {
      return Optional.empty();
    }
    char mode = text.charAt(digits + 1);
    int from = mode == ' ' || mode == '*' ? digits + 2 : digits + 1;
    return of(text.substring(0, digits), unescaped(text.substring(from), escaped), mode == '*');
  }

  /** {@code SHA256 (name) = checksum}. */
  private static Optional<SumLine> ofBsd(String text, Algorithm kind, boolean escaped) {
    var before = kind.name() + " (";
    var between = ") = ";
    int end = text.lastIndexOf(between);
    if (!text.startsWith(before) || end < before.length()) {
      return Optional.empty();
    }
    var sum = text.substring(end + between.length());
    return sum.length() == kind.digits() && digits(sum) == sum.length()
        ? of(sum, unescaped(text.substring(before.length(), end), escaped), false)
        : Optional.empty();
  }

  private static Optional<SumLine> of(String sum, String written, boolean marked) {
    boolean here = HERE.stream().anyMatch(written::startsWith);
    var path = here ? written.substring(2) : written;
    return path.isEmpty()
        ? Optional.empty()
        : Optional.of(new SumLine(sum.toLowerCase(Locale.ROOT), path, marked || here));
  }

  private static String unescaped(String name, boolean escaped) {
    if (!escaped) {
      return name;
    }
    var plain = new StringBuilder(name.length());
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (c == '\\' && i + 1 < name.length()) {
        c =
            switch (name.charAt(++i)) {
              case 'n' -> '\n';
              case 'r' -> '\r';
              default -> name.charAt(i);
            };
      }
      plain.append(c);
    }
    return plain.toString();
  }

  private static int digits(String text) {
    int count = 0;
    while (count < text.length()
        && Character.digit(text.charAt(count), 16) >= 0
        && text.charAt(count) < 128) {
      count++;
    }
    return count;
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t';
  }
}
