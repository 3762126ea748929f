package org.framewright.shotlist;

import org.framewright.base.Problem;

/**
 * What is wrong or was guessed in a list, and where in it.
 *
 * @param problem its place names the file, the sheet of a workbook, the line and the column
 * @param line the line of the file, or the row of the sheet, from 1; 0 when it concerns the whole
 * @param column the character in that line where the cell begins, or the column of the sheet, from
 *     1; 0 when it concerns the whole line
 */
public record ListProblem(Problem problem, int line, int column) {

  /**
   * A problem at a place of a list.
   *
   * @param source the file's name, with the sheet's for a workbook
   */
  static ListProblem of(String source, int line, int column, String what, String remedy) {
    var where = new StringBuilder(source);
    if (line > 0) {
      where.append(", line ").append(line);
    }
    if (column > 0) {
      where.append(", column ").append(column);
    }
    return new ListProblem(new Problem(what, where.toString(), remedy), line, column);
  }

  /** One of a list as a whole. */
  static ListProblem ofAll(String source, String what, String remedy) {
    return of(source, 0, 0, what, remedy);
  }

  /** {@code list.csv, line 3, column 7: ...}. */
  @Override
  public String toString() {
    return problem.sentence();
  }
}
