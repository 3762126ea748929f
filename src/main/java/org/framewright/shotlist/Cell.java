package org.framewright.shotlist;

/**
 * One cell of a list.
 *
 * @param line the line of the file, or the row of the sheet, where it begins, from 1
 * @param column the character in that line, or the column of the sheet, where it begins, from 1
 */
record Cell(String text, int line, int column) {

  boolean blank() {
    return text.isBlank();
  }

  /** The text on one line, without space around it. */
  String plain() {
    return text.replaceAll("[\\s\\u00A0]+", " ").strip();
  }
}
