package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;

/**
 * Reads separated values: RFC 4180, with any separator, any line ends, and quotes inside unquoted
 * cells taken as they are. Every cell knows where it began.
 */
final class Csv {
  private final String source;
  private final String text;
  private final char separator;
  private final List<List<Cell>> rows = new ArrayList<>();
  private final List<Fault> faults = new ArrayList<>();
  private int at;
  private int line = 1;
  private int column = 1;

  private Csv(String source, String text, char separator) {
    this.source = source;
    this.text = text;
    this.separator = separator;
  }

  static Grid read(String source, String text, char separator, String form) {
    var csv = new Csv(source, text, separator);
    csv.read();
    return new Grid(form, csv.rows, csv.faults);
  }

  private void read() {
    var row = new ArrayList<Cell>();
    while (at < text.length()) {
      row.add(peek() == '"' ? quoted() : plain());
      if (at < text.length() && peek() == separator) {
        step();
        if (at == text.length()) {
          row.add(new Cell("", line, column));
        }
        continue;
      }
      if (at < text.length()) {
        step();
      }
      end(row);
      row = new ArrayList<>();
    }
    end(row);
  }

  private void end(List<Cell> row) {
    if (!row.stream().allMatch(Cell::blank)) {
      rows.add(row);
    }
  }

  private Cell plain() {
    int from = at;
    var cell = new Cell("", line, column);
    while (at < text.length() && !ends()) {
      step();
    }
    return new Cell(text.substring(from, at), cell.line(), cell.column());
  }

  private Cell quoted() {
    int fromLine = line;
    int fromColumn = column;
    var content = new StringBuilder();
    step();
    while (true) {
      if (at == text.length()) {
        faults.add(
            new Fault(
                source,
                fromLine,
                fromColumn,
                "a quotation mark opens here and is never closed",
                "Close the cell with a quotation mark, or take this one out."));
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
      break;
    }
    if (at < text.length() && !ends()) {
      int afterLine = line;
      int afterColumn = column;
      int from = at;
      while (at < text.length() && !ends()) {
        step();
      }
      var rest = text.substring(from, at);
      if (!rest.isBlank()) {
        faults.add(
            new Fault(
                source,
                afterLine,
                afterColumn,
                "\"" + rest.strip() + "\" follows a closing quotation mark",
                "Write a quotation mark inside a cell twice, or put a separator here."));
      }
    }
    return new Cell(content.toString(), fromLine, fromColumn);
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
