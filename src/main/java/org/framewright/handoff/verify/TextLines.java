package org.framewright.handoff.verify;

import java.nio.charset.Charset;
import java.util.Iterator;
import java.util.NoSuchElementException;

/**
 * The lines of a text that somebody else wrote, which end in line feed, carriage return or both;
 * made one by one, as a text may be nothing but line ends.
 */
final class TextLines implements Iterable<TextLines.Line> {
  private static final char MARK = '\uFEFF';
  private static final char NO_CHARACTER = '\uFFFD';

  private final String text;
  private final boolean marked;

  private TextLines(String text, boolean marked) {
    this.text = text;
    this.marked = marked;
  }

  /**
   * A line.
   *
   * @param number from 1
   * @param text without its end
   */
  record Line(int number, String text) {
    /** Whether its bytes were text of the encoding; a NUL is none. */
    boolean isText() {
      return text.indexOf(NO_CHARACTER) < 0 && text.indexOf('\0') < 0;
    }
  }

  static TextLines of(byte[] bytes, Charset encoding) {
    var text = new String(bytes, encoding);
    boolean marked = !text.isEmpty() && text.charAt(0) == MARK;
    return new TextLines(text, marked);
  }

  /** Whether it begins with a byte-order mark that its encoding does not need. */
  boolean isMarked() {
    return marked;
  }

  /** Whether its last line has an end. */
  boolean isEnded() {
    return text.isEmpty() || isEnd(text.charAt(text.length() - 1));
  }

  private static boolean isEnd(char c) {
    return c == '\n' || c == '\r';
  }

  @Override
  public Iterator<Line> iterator() {
    return new Iterator<>() {
      private int from = marked ? 1 : 0;
      private int number;

      @Override
      public boolean hasNext() {
        return from < text.length();
      }

      @Override
      public Line next() {
        if (!hasNext()) {
          throw new NoSuchElementException();
        }
        int to = from;
        while (to < text.length() && !isEnd(text.charAt(to))) {
          to++;
        }
        var line = new Line(++number, text.substring(from, to));
        boolean both = to + 1 < text.length() && text.startsWith("\r\n", to);
        from = to + (both ? 2 : 1);
        return line;
      }
    };
  }
}
