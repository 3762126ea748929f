package org.framewright.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.framewright.base.PlainText;

/**
 * Writes markup that is both HTML and XML. Every text and every value is escaped, so that nothing
 * that a person typed can become markup; what XML cannot hold, and marks that turn the direction of
 * what follows, are left out.
 */
final class Html {
  /** More than anybody reads of one title. */
  static final int LONGEST = 300;

  private final Appendable out;
  private final Deque<String> open = new ArrayDeque<>();

  Html(Appendable out) {
    this.out = out;
  }

  /** The first line of a page. */
  Html documentType() {
    return raw("<!DOCTYPE html>\n");
  }

  /** Opens an element; attributes as name and value in turn. */
  Html open(String tag, String... attributes) {
    begin(tag, attributes);
    open.push(tag);
    return raw(">");
  }

  /** An element that holds nothing. */
  Html empty(String tag, String... attributes) {
    begin(tag, attributes);
    return raw("/>");
  }

  private void begin(String tag, String... attributes) {
    raw("<").raw(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      raw(" ").raw(attributes[i]).raw("=\"").raw(escaped(attributes[i + 1])).raw("\"");
    }
  }

  /** Closes the element that was opened last. */
  Html close() {
    return raw("</").raw(open.pop()).raw(">");
  }

  /** Closes it and begins a new line, for people who look at the source. */
  Html end() {
    return close().raw("\n");
  }

  /** Text of our own. */
  Html text(String text) {
    return raw(escaped(text));
  }

  /** An element with text of our own. */
  Html element(String tag, String text, String... attributes) {
    return open(tag, attributes).text(text).close();
  }

  /** Text of other people, shortened; one that runs from right to left stands by itself. */
  Html words(String words) {
    var line = line(words);
    if (!isFromRight(line)) {
      return text(line);
    }
    return element("bdi", line, "dir", firstIsFromRight(line) ? "rtl" : "ltr");
  }

  /** An element with text of other people. */
  Html wordsIn(String tag, String words, String... attributes) {
    return open(tag, attributes).words(words).close();
  }

  /** Rules of a style sheet, which has no escapes: none of them may come from outside. */
  Html style(String css) {
    open("style");
    raw(css);
    return end();
  }

  private Html raw(String text) {
    try {
      out.append(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return this;
  }

  /** Text of other people in one line and of a bearable length. */
  static String line(String text) {
    var line = new StringBuilder(Math.min(text.length(), LONGEST));
    int shown = 0;
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      i += Character.charCount(c);
      if (PlainText.isDirectionMark(c) || isHalfOfAPair(c)) {
        continue; // two halves that come to stand side by side would be another character
      }
      boolean space = Character.isWhitespace(c) || Character.isISOControl(c) || isSeparator(c);
      if (space && (line.isEmpty() || line.charAt(line.length() - 1) == ' ')) {
        continue;
      }
      if (++shown > LONGEST) {
        return line.append('…').toString();
      }
      line.appendCodePoint(space ? ' ' : c);
    }
    return line.toString().strip();
  }

  private static boolean isSeparator(int c) {
    return c == 0x2028 || c == 0x2029;
  }

  private static boolean isHalfOfAPair(int c) {
    return c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE;
  }

  private static boolean isFromRight(String text) {
    return text.codePoints().anyMatch(Html::isFromRight);
  }

  private static boolean isFromRight(int c) {
    byte direction = Character.getDirectionality(c);
    return direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
        || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC;
  }

  private static boolean firstIsFromRight(String text) {
    return text.codePoints()
        .filter(
            c ->
                isFromRight(c)
                    || Character.getDirectionality(c) == Character.DIRECTIONALITY_LEFT_TO_RIGHT)
        .limit(1)
        .anyMatch(Html::isFromRight);
  }

  static String escaped(String text) {
    var escaped = new StringBuilder(text.length() + 16);
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      i += Character.charCount(c);
      switch (c) {
        case '&' -> escaped.append("&amp;");
        case '<' -> escaped.append("&lt;");
        case '>' -> escaped.append("&gt;");
        case '"' -> escaped.append("&quot;");
        case '\'' -> escaped.append("&#39;");
        default -> {
          if (isAllowed(c)) {
            escaped.appendCodePoint(c);
          }
        }
      }
    }
    return escaped.toString();
  }

  /** What XML 1.0 can hold and HTML allows; neither half of a pair alone, no control character. */
  private static boolean isAllowed(int c) {
    return c == '\n'
        || c == '\t'
        || (c >= 0x20 && c < 0x7F)
        || (c >= 0xA0
            && !isHalfOfAPair(c)
            && (c & 0xFFFE) != 0xFFFE
            && !(c >= 0xFDD0 && c <= 0xFDEF)
            && !PlainText.isDirectionMark(c));
  }
}
