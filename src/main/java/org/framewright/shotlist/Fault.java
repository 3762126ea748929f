package org.framewright.shotlist;

/**
 * What is wrong in a list, where, and its remedy.
 *
 * @param source the file's name, with the sheet's for a workbook
 * @param line the line of the file, or the row of the sheet, from 1; 0 when it concerns the whole
 * @param column the character in that line where the cell begins, or the column of the sheet, from
 *     1; 0 when it concerns the whole line
 */
public record Fault(String source, int line, int column, String message, String remedy) {

  /** {@code list.csv, line 3, column 7: ...}. */
  @Override
  public String toString() {
    var where = new StringBuilder(source);
    if (line > 0) {
      where.append(", line ").append(line);
    }
    if (column > 0) {
      where.append(", column ").append(column);
    }
    return where + ": " + message;
  }
}
