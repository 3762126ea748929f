package org.framewright.handoff.names;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.NameKey;

/**
 * A run of digits or of letters.
 *
 * @param text as written; digits of every script as 0 to 9
 * @param folded by which two are one: letters without case, numbers without leading zeros
 * @param from where it begins in its line
 * @param to where it ends
 */
record Token(String text, String folded, boolean number, int from, int to) {
  /** A line in which wide letters, ligatures and circled numbers are plain ones. */
  static String plain(String line) {
    for (int i = 0; i < line.length(); i++) {
      if (line.charAt(i) >= 128) {
        return Normalizer.normalize(line, Normalizer.Form.NFKC);
      }
    }
    return line;
  }

  /** The tokens of a plain line. */
  static List<Token> of(String line) {
    var tokens = new ArrayList<Token>();
    int at = 0;
    while (at < line.length()) {
      int point = line.codePointAt(at);
      boolean digit = Character.isDigit(point);
      if (!digit && !isLetter(point)) {
        at += Character.charCount(point);
        continue;
      }
      int from = at;
      var text = new StringBuilder();
      while (at < line.length()) {
        int next = line.codePointAt(at);
        if (digit ? !Character.isDigit(next) : !isLetter(next) && !isMark(next)) {
          break;
        }
        if (digit) {
          text.append((char) ('0' + Character.digit(next, 10)));
        } else {
          text.appendCodePoint(next);
        }
        at += Character.charCount(next);
      }
      tokens.add(of(text.toString(), digit, from, at));
    }
    return tokens;
  }

  /** A number that stands nowhere. */
  static Token number(String digits) {
    return of(digits, true, 0, digits.length());
  }

  private static Token of(String text, boolean digits, int from, int to) {
    return new Token(text, digits ? withoutZeros(text) : NameKey.of(text), digits, from, to);
  }

  private static String withoutZeros(String digits) {
    int first = 0;
    while (first < digits.length() - 1 && digits.charAt(first) == '0') {
      first++;
    }
    return digits.substring(first);
  }

  private static boolean isLetter(int point) {
    return Character.isLetter(point);
  }

  private static boolean isMark(int point) {
    return switch (Character.getType(point)) {
      case Character.NON_SPACING_MARK, Character.COMBINING_SPACING_MARK, Character.ENCLOSING_MARK ->
          true;
      default -> false;
    };
  }

  /** What it is compared by where zeros count. */
  String exact() {
    return number ? text : folded;
  }
}
