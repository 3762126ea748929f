package org.framewright.shotlist;

import java.util.List;
import org.framewright.base.FormulaGuard;

/**
 * Tables as CSV: RFC 4180, with an apostrophe before what a spreadsheet would run as a formula.
 * Cells with a semicolon are quoted as well, since some spreadsheets part cells there.
 */
public final class CsvText {
  private CsvText() {}

  /** The rows, without a byte-order mark; {@code lineEnd} stands behind each. */
  public static String of(List<List<String>> rows, String lineEnd) {
    var text = new StringBuilder();
    for (var row : rows) {
      for (int i = 0; i < row.size(); i++) {
        text.append(i == 0 ? "" : ",").append(quoted(FormulaGuard.with(row.get(i))));
      }
      text.append(lineEnd);
    }
    return text.toString();
  }

  private static String quoted(String cell) {
    boolean needed =
        cell.chars().anyMatch(c -> c == ',' || c == ';' || c == '"' || c == '\n' || c == '\r')
            || !cell.equals(cell.strip());
    return needed ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
  }
}
