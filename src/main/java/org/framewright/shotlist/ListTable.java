package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;

/**
 * The table that was found in a list, as a person looks at it.
 *
 * @param headings the line of headings as written, by which a list of the same form is known; empty
 *     where there is none
 * @param columns those that have a heading or hold something, each as it was taken
 * @param lines the first lines below the headings
 */
public record ListTable(List<String> headings, List<Column> columns, List<Line> lines) {
  /** So many lines show what a column holds. */
  private static final int SHOWN = 12;

  /** So many characters of a cell are shown. */
  private static final int CHARACTERS = 240;

  /** None was found. */
  static final ListTable NONE = new ListTable(List.of(), List.of(), List.of());

  /**
   * One line.
   *
   * @param number the line of the file, or the row of the sheet, from 1
   * @param cells of all columns of the list, the beginning of long ones
   */
  public record Line(int number, List<String> cells) {
    public Line {
      cells = List.copyOf(cells);
    }

    /** What stands in a column; blank where the line ends before it. */
    public String cell(Column column) {
      return column.position() <= cells.size() ? cells.get(column.position() - 1) : "";
    }
  }

  public ListTable {
    headings = List.copyOf(headings);
    columns = List.copyOf(columns);
    lines = List.copyOf(lines);
  }

  /**
   * @param rows all below the headings
   */
  static ListTable of(List<String> headings, List<Column> columns, List<List<Cell>> rows) {
    var lines = new ArrayList<Line>();
    for (var row : rows.subList(0, Math.min(SHOWN, rows.size()))) {
      lines.add(
          new Line(
              row.getFirst().line(),
              row.stream().map(cell -> Cell.brief(cell.plain(), CHARACTERS)).toList()));
    }
    return new ListTable(headings, columns, lines);
  }
}
