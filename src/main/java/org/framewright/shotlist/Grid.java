package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * The rows of a list, and what was wrong with their form.
 *
 * @param form in words, such as {@code UTF-8, commas}
 * @param rows without the blank ones
 * @param problems what is wrong in some cells
 * @param remarks what was noticed on the way and stops nothing
 * @param excess why the rest was not read, if the list holds more than it may
 */
record Grid(
    Text form,
    List<List<Cell>> rows,
    List<ListProblem> problems,
    List<ListProblem> remarks,
    Optional<ListProblem> excess) {

  /** Collects rows, and says when there are more than a list may have. */
  static final class Builder {
    private final String source;
    private final int most;
    private final List<List<Cell>> rows = new ArrayList<>();
    private final List<ListProblem> problems = new ArrayList<>();
    private Optional<ListProblem> excess = Optional.empty();
    private int cells;
    private long text;

    /**
     * @param most rows that are looked at; those behind them are passed over
     */
    Builder(String source, int most) {
      this.source = source;
      this.most = most;
    }

    /** Whether no more rows are taken. */
    boolean isFull() {
      return excess.isPresent() || rows.size() >= most;
    }

    /** Takes a row unless it is blank. */
    void add(List<Cell> row) {
      if (row.stream().allMatch(Cell::blank) || isFull()) {
        return;
      }
      cells += row.size();
      if (rows.size() == Limits.LINES) {
        exceeds(
            row.getFirst(),
            Text.of("the list has more than {0} lines", new Text.Grouped(Limits.LINES)),
            Text.of("Take out what this job does not shoot, or split the list into several jobs."));
      } else if (cells > Limits.CELLS) {
        exceeds(
            row.getFirst(),
            Text.of("the list has more than {0} cells", new Text.Grouped(Limits.CELLS)),
            Text.of("Take out the columns that the shoot does not need."));
      } else {
        rows.add(List.copyOf(row));
      }
    }

    /** Takes a cell into a row. */
    void add(List<Cell> row, Cell cell) {
      if (cell.text().length() > Limits.CELL) {
        exceeds(
            cell,
            Text.of("a cell holds more than {0} characters", new Text.Grouped(Limits.CELL)),
            Text.of(
                "Shorten it; a quotation mark that is opened and never closed makes one cell of"
                    + " many."));
      } else if (text + cell.text().length() > Limits.TEXT) {
        exceeds(
            cell,
            Text.of(
                "the list holds more than {0} million characters",
                new Text.Grouped((int) (Limits.TEXT >> 20))),
            Text.of("Take out the columns that the shoot does not need."));
      } else if (row.size() < Limits.COLUMNS) {
        text += cell.text().length();
        row.add(cell);
      } else if (!cell.blank()) {
        exceeds(
            cell,
            Text.of("the list has more than {0} columns", new Text.Grouped(Limits.COLUMNS)),
            Text.of("Take out the columns that the shoot does not need."));
      }
    }

    void problem(int line, int column, Text what, Text remedy) {
      problems.add(ListProblem.of(source, line, column, what, remedy));
    }

    private void exceeds(Cell cell, Text what, Text remedy) {
      if (excess.isEmpty()) {
        excess = Optional.of(ListProblem.of(source, cell.line(), cell.column(), what, remedy));
      }
    }

    Grid build(Text form, List<ListProblem> remarks) {
      return new Grid(form, List.copyOf(rows), List.copyOf(problems), remarks, excess);
    }
  }
}
