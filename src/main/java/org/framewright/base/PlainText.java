package org.framewright.base;

import java.util.Locale;

/**
 * Other people's text, made safe to show: titles of a client's list, names of files, lines of logs.
 * In a terminal a control character can move the cursor, hide what was printed or run a command; a
 * direction mark can make a name read as another one.
 */
public final class PlainText {
  private PlainText() {}

  /**
   * The text in one line, without anything that acts on a terminal: control characters (Unicode
   * general category Cc, the C1 ones and line feed too), line and paragraph separators, explicit
   * direction marks and unpaired surrogates are shown by their code in braces. All other text,
   * whatever its script, stays.
   */
  public static String line(String text) {
    int first = 0;
    while (first < text.length() && isPlain(text, first)) {
      first++;
    }
    if (first == text.length()) {
      return text;
    }
    var safe = new StringBuilder(text.length() + 16).append(text, 0, first);
    for (int i = first; i < text.length(); i++) {
      if (isPlain(text, i)) {
        safe.append(text.charAt(i));
      } else {
        safe.append("\\u{")
            .append(Integer.toHexString(text.charAt(i)).toUpperCase(Locale.ROOT))
            .append('}');
      }
    }
    return safe.toString();
  }

  /** The first characters of a text, at most so many; one that takes two is not cut in two. */
  public static String start(String text, int most) {
    if (text.length() <= most) {
      return text;
    }
    boolean cuts = most > 0 && Character.isHighSurrogate(text.charAt(most - 1));
    return text.substring(0, cuts ? most - 1 : most);
  }

  private static boolean isPlain(String text, int at) {
    char c = text.charAt(at);
    if (c < 0x7F) {
      return c >= 0x20;
    }
    if (Character.isHighSurrogate(c)) {
      return at + 1 < text.length() && Character.isLowSurrogate(text.charAt(at + 1));
    }
    if (Character.isLowSurrogate(c)) {
      return at > 0 && Character.isHighSurrogate(text.charAt(at - 1));
    }
    return c > 0x9F && c != 0x2028 && c != 0x2029 && !isDirectionMark(c);
  }

  /** Whether a character is not seen and can make what follows read in another direction. */
  public static boolean isDirectionMark(int c) {
    return (c >= 0x202A && c <= 0x202E)
        || (c >= 0x2066 && c <= 0x2069)
        || c == 0x200E
        || c == 0x200F
        || c == 0x061C
        || c == 0xFEFF;
  }

  /** A number of things: {@code 1 frame}, {@code 12 frames}. */
  public static String counted(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }
}
