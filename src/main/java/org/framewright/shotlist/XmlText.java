package org.framewright.shotlist;

import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Text of a workbook's cells. XML has no way to write most control characters; workbooks write them
 * {@code _xHHHH_}, and an underscore that would read as the beginning of one as {@code _x005F_}.
 * Source: ECMA-376, part 1, section 22.9.2.19 (ST_Xstring).
 */
final class XmlText {
  private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{4})_");

  /** What an escape begins with; whatever follows may end it, as another escape does. */
  private static final Pattern BEGINNING = Pattern.compile("_x[0-9A-Fa-f]{4}");

  private static final HexFormat HEX = HexFormat.of().withUpperCase();

  private XmlText() {}

  /** The text as a cell of a workbook holds it. */
  static String escaped(String text) {
    var escaped = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (!isXml(text, i)
          || (c == '_' && BEGINNING.matcher(text).region(i, end(text, i)).matches())) {
        escaped.append("_x").append(HEX.toHexDigits(c)).append('_');
      } else {
        escaped.append(c);
      }
    }
    return escaped.toString();
  }

  /** The text that a cell of a workbook means. */
  static String plain(String escaped) {
    return escaped.indexOf("_x") < 0
        ? escaped
        : ESCAPE
            .matcher(escaped)
            .replaceAll(
                found ->
                    Matcher.quoteReplacement(
                        Character.toString((char) HexFormat.fromHexDigits(found.group(1)))));
  }

  private static int end(String text, int from) {
    return Math.min(text.length(), from + "_x0000".length());
  }

  /** Whether XML 1.0 can hold it; a carriage return it would read as a line feed. */
  private static boolean isXml(String text, int at) {
    char c = text.charAt(at);
    if (Character.isHighSurrogate(c)) {
      return at + 1 < text.length() && Character.isLowSurrogate(text.charAt(at + 1));
    }
    if (Character.isLowSurrogate(c)) {
      return at > 0 && Character.isHighSurrogate(text.charAt(at - 1));
    }
    return c == '\t' || c == '\n' || (c >= ' ' && c < 0xFFFE);
  }
}
