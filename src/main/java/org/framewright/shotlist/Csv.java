package org.framewright.shotlist;

import java.util.ArrayList;
import org.framewright.base.FormulaGuard;
import org.framewright.base.Text;

/**
 * Reads separated values: RFC 4180, with any separator, any line ends, and quotes inside unquoted
 * cells taken as they are. Every cell knows where it began.
 */
final class Csv {
  private final String text;
  private final char separator;
  private final Grid.Builder grid;
  private int at;
  private int line = 1;
  private int column = 1;

  private Csv(String text, char separator, Grid.Builder grid) {
    this.text = text;
    this.separator = separator;
    this.grid = grid;
  }

  /** Reads rows into a grid until the text ends or the grid is full. */
  static void read(String text, char separator, Grid.Builder grid) {
    new Csv(text, separator, grid).read();
  }

  private void read() {
    var row = new ArrayList<Cell>();
    while (at < text.length() && !grid.isFull()) {
      grid.add(row, peek() == '"' ? quoted() : plain());
      if (at < text.length() && peek() == separator) {
        step();
        if (at == text.length()) {
          grid.add(row, new Cell("", line, column));
        }
        continue;
      }
      if (at < text.length()) {
        step();
      }
      grid.add(row);
      row.clear();
    }
    grid.add(row);
  }

  private Cell plain() {
    int fromLine = line;
    int fromColumn = column;
    return new Cell(FormulaGuard.without(rest()), fromLine, fromColumn);
  }

  /** What stands here before the next separator or line end. */
  private String rest() {
    int from = at;
    while (at < text.length() && !ends()) {
      step();
    }
    return text.substring(from, at);
  }

  private Cell quoted() {
    int fromLine = line;
    int fromColumn = column;
    var content = new StringBuilder();
    step();
    while (content.length() <= Limits.CELL) {
      if (at == text.length()) {
        grid.problem(
            fromLine,
            fromColumn,
            Text.of("a quotation mark opens here and is never closed"),
            Text.of("Close the cell with a quotation mark, or take this one out."));
        break;
      }
      if (peek() != '"') {
        content.append(step());
        continue;
      }
      step();
      if (at < text.length() && peek() == '"') {
        content.append(step());
        continue;
      }
      afterClosing();
      break;
    }
    return new Cell(FormulaGuard.without(content.toString()), fromLine, fromColumn);
  }

  private void afterClosing() {
    int afterLine = line;
    int afterColumn = column;
    var rest = rest();
    if (!rest.isBlank()) {
      grid.problem(
          afterLine,
          afterColumn,
          Text.of("\"{0}\" follows a closing quotation mark", Cell.brief(rest.strip())),
          Text.of("Write a quotation mark inside a cell twice, or put a separator here."));
    }
  }

  private char peek() {
    return text.charAt(at);
  }

  private boolean ends() {
    return peek() == separator || peek() == '\n' || peek() == '\r';
  }

  /**
   * Takes one character; a carriage return with its line feed is one, and is kept as a line feed.
   */
  private char step() {
    char taken = text.charAt(at++);
    if (taken == '\r') {
      if (at < text.length() && peek() == '\n') {
        at++;
      }
      taken = '\n';
    }
    if (taken == '\n') {
      line++;
      column = 1;
    } else if (!Character.isLowSurrogate(taken)) {
      column++;
    }
    return taken;
  }
}
