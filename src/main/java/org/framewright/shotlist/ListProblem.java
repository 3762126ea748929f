package org.framewright.shotlist;

import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * What is wrong or was guessed in a list, and where in it.
 *
 * @param problem its place names the file, the sheet of a workbook, the line and the column
 * @param line the line of the file, or the row of the sheet, from 1; 0 when it concerns the whole
 * @param column the character in that line where the cell begins, or the column of the sheet, from
 *     1; 0 when it concerns the whole line
 * @param option what the remedy is done with on a command line, such as {@code --column
 *     setup=HEADING}; empty where it is not done by an option
 */
public record ListProblem(Problem problem, int line, int column, String option) {

  /** One that no option is a remedy for. */
  public ListProblem(Problem problem, int line, int column) {
    this(problem, line, column, "");
  }

  /**
   * A problem at a place of a list.
   *
   * @param source the file's name, with the sheet's for a workbook
   */
  static ListProblem of(String source, int line, int column, Text what, Text remedy) {
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
  static ListProblem ofAll(String source, Text what, Text remedy) {
    return of(source, 0, 0, what, remedy);
  }

  /** The same whose remedy is an option of a command line. */
  public ListProblem with(String commandLineOption) {
    return new ListProblem(problem, line, column, commandLineOption);
  }

  /** For whoever can give options: the remedy says which. */
  public Problem onCommandLine() {
    if (option.isEmpty()) {
      return problem;
    }
    var remedy = problem.remedy();
    var open = remedy.endsWith(".") ? remedy.substring(0, remedy.length() - 1) : remedy;
    return new Problem(problem.fault(), problem.where(), Text.of("{0} with {1}.", open, option));
  }

  /** {@code list.csv, line 3, column 7: ...}. */
  @Override
  public String toString() {
    return problem.sentence();
  }
}
