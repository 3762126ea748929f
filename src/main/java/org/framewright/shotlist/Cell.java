package org.framewright.shotlist;

import java.util.regex.Pattern;
import org.framewright.base.PlainText;

/**
 * One cell of a list.
 *
 * @param line the line of the file, or the row of the sheet, where it begins, from 1
 * @param column the character in that line, or the column of the sheet, where it begins, from 1
 * @param kind what a workbook says of it
 */
record Cell(String text, int line, int column, Kind kind) {

  /** What a cell of a workbook may be besides text. */
  enum Kind {
    PLAIN,
    /** A part of a merged cell, with the text that its first part shows. */
    CARRIED,
    /** A date, in the form of ISO 8601. */
    DATE,
    /** An error, such as {@code #REF!}. */
    ERROR,
    /** A formula that was saved without its value. */
    NO_VALUE,
    /** A number of more digits than a spreadsheet keeps. */
    LONG_NUMBER
  }

  Cell(String text, int line, int column) {
    this(text, line, column, Kind.PLAIN);
  }

  private static final Pattern SPACE = Pattern.compile("[\\s\\x1C-\\x1F\\x85\\p{Z}]+");
  private static final int SHOWN = 60;

  /** Whether a person sees nothing in it. */
  boolean blank() {
    return text.isEmpty() || plain().isEmpty();
  }

  /** The text on one line, without space around it. */
  String plain() {
    // Most cells need nothing taken off, and a long list has many.
    boolean spaced = true;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean isSpace = c == ' ';
      if (c < ' ' || c >= 0x7F || (isSpace && (spaced || i + 1 == text.length()))) {
        return SPACE.matcher(text).replaceAll(" ").strip();
      }
      spaced = isSpace;
    }
    return text;
  }

  /** The same, short enough for a message. */
  String brief() {
    return brief(plain());
  }

  static String brief(String text) {
    return brief(text, SHOWN);
  }

  /** The beginning of a text, of so many characters. */
  static String brief(String text, int most) {
    return text.length() <= most ? text : PlainText.start(text, most) + "...";
  }
}
