package org.framewright.shotlist;

import java.time.Month;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the text of a code looks like, and what a spreadsheet may have made of it. */
final class CodeShape {
  private static final int LONGEST = 40;

  /** {@code 4,01E+12}: what is left of a long number in a column that is too narrow for it. */
  private static final Pattern SCIENTIFIC = Pattern.compile("-?\\d+([.,]\\d+)?[eE]\\+\\d{1,3}");

  /** Dates without a name in them: ISO 8601, and Chinese and Japanese ones. */
  private static final Pattern DATE =
      Pattern.compile(
          "\\d{4}-\\d{2}-\\d{2}([T ]\\d{2}:\\d{2}(:\\d{2})?)?|(\\d{2,4}\u5E74)?\\d{1,2}\u6708\\d{1,2}\u65E5");

  private static final Pattern NUMBERS =
      Pattern.compile("\\d{1,2}([./-])\\d{1,2}\\1(\\d{2}|\\d{4})");

  /** {@code 3-Jan}, {@code 03. Mrz}, {@code Jan-26}, {@code 1 mars 2026}. */
  private static final Pattern WITH_A_MONTH =
      Pattern.compile("(\\d{1,2}[.\\s/-]{1,2})?(\\p{L}{3,10})\\.?([.\\s/-]{1,2}(\\d{2}|\\d{4}))?");

  /** The months' names that spreadsheets write: Unicode CLDR, as Java has it. */
  private static final Set<String> MONTHS =
      Stream.of("en", "de", "fr", "es", "it", "pl", "nl", "pt", "sv")
          .map(Locale::of)
          .flatMap(
              locale ->
                  Stream.of(Month.values())
                      .flatMap(
                          month ->
                              Stream.of(TextStyle.SHORT, TextStyle.SHORT_STANDALONE, TextStyle.FULL)
                                  .map(style -> month.getDisplayName(style, locale))))
          .map(Vocabulary::plain)
          .collect(Collectors.toUnmodifiableSet());

  /** The short name of March that spreadsheets in German write besides CLDR's. */
  private static final String MARCH = "mrz";

  private CodeShape() {}

  /** Whether a text looks like a number or a code: one word with a digit in it. */
  static boolean isCode(String text) {
    return !text.isEmpty()
        && text.length() <= LONGEST
        && hasDigit(text)
        && text.chars().noneMatch(CodeShape::parts)
        && !isDate(text);
  }

  /** Whether a sign parts words or cells: a line that was not split there looks like one word. */
  private static boolean parts(int sign) {
    return " ;|\t".indexOf(sign) >= 0;
  }

  static boolean hasDigit(String text) {
    return text.chars().anyMatch(c -> c >= '0' && c <= '9');
  }

  /** Whether a spreadsheet shortened a number to a power of ten. */
  static boolean isShortened(String text) {
    return SCIENTIFIC.matcher(text).matches();
  }

  /** Whether a text can hardly be anything but a date. */
  static boolean isDate(String text) {
    if (text.length() > LONGEST || !hasDigit(text)) {
      return false;
    }
    if (DATE.matcher(text).matches()) {
      return true;
    }
    var named = WITH_A_MONTH.matcher(text);
    if (!named.matches() || (named.group(1) == null && named.group(3) == null)) {
      return false;
    }
    var month = Vocabulary.plain(named.group(2));
    // A month's name stands apart from its numbers; MAR12 is a code.
    return MONTHS.contains(month) || month.equals(MARCH);
  }

  /** Whether a text may be a date or a number with separators: {@code 12.05.26}. */
  static boolean mayBeDate(String text) {
    return NUMBERS.matcher(text).matches();
  }
}
