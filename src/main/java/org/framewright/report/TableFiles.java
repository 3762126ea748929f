package org.framewright.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.framewright.base.PlainText;
import org.framewright.shotlist.CsvText;

/**
 * Writes tables: a workbook with a sheet for each, or the first as CSV of RFC 4180 in UTF-8 with a
 * byte-order mark, with an apostrophe before what a spreadsheet would run as a formula. Every cell
 * is text: a setup 001 is not the number 1.
 */
final class TableFiles {
  /** What a cell of a workbook takes (common practice of spreadsheets), less what escapes add. */
  private static final int LONGEST_CELL = 32_000;

  private TableFiles() {}

  static void csv(Table table, Words words, OutputStream out) throws IOException {
    var rows = new ArrayList<List<String>>();
    rows.add(table.headings().stream().map(words::say).toList());
    for (var row : table.rows()) {
      rows.add(row.stream().map(PlainText::line).toList());
    }
    out.write(("\uFEFF" + CsvText.of(rows, "\r\n")).getBytes(StandardCharsets.UTF_8));
  }

  static void workbook(List<Table> tables, Words words, OutputStream out) throws IOException {
    try (var workbook = new Workbook(out, "Framewright", null)) {
      for (var table : tables) {
        var sheet = workbook.newWorksheet(words.say(table.name()));
        for (int j = 0; j < table.headings().size(); j++) {
          sheet.value(0, j, words.say(table.headings().get(j)));
        }
        for (int i = 0; i < table.rows().size(); i++) {
          for (int j = 0; j < table.headings().size(); j++) {
            sheet.value(i + 1, j, cell(table.rows().get(i).get(j)));
          }
        }
        sheet.range(0, 0, 0, table.headings().size() - 1).style().bold().set();
        sheet.freezePane(1, 1);
      }
    }
  }

  private static String cell(String text) {
    return PlainText.start(PlainText.line(text), LONGEST_CELL);
  }
}
