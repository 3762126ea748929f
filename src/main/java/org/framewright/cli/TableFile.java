package org.framewright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.dhatim.fastexcel.Workbook;
import org.framewright.base.DurableFiles;
import org.framewright.base.PlainText;
import org.framewright.shotlist.CsvText;

/**
 * A table for people and spreadsheets: a workbook where the file ends in {@code .xlsx}, else CSV as
 * RFC 4180 has it, in UTF-8 with a byte-order mark, with an apostrophe before what a spreadsheet
 * would run as a formula. What is a number is one in a workbook, too; all else is text: a setup 001
 * is not the number 1.
 */
final class TableFile {
  /** Rows of a sheet (ECMA-376 leaves it open; what spreadsheets take, common practice). */
  private static final int MOST_ROWS = 1 << 20;

  private TableFile() {}

  /**
   * Writes a table to a file, whole or not at all.
   *
   * @param rows the headings first
   */
  static void write(
      Path file, String sheet, List<? extends List<? extends Object>> rows, boolean replace)
      throws IOException, CommandFailure {
    boolean workbook = file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".xlsx");
    if (workbook && rows.size() > MOST_ROWS) {
      throw CommandFailure.badInput(
          "%d lines are more than a workbook takes".formatted(rows.size()), "Write it as .csv.");
    }
    var bytes =
        workbook
            ? workbook(sheet, rows)
            : ("\uFEFF" + csv(rows, "\r\n")).getBytes(StandardCharsets.UTF_8);
    if (replace) {
      DurableFiles.replace(file, bytes);
      return;
    }
    try {
      DurableFiles.create(file, bytes);
    } catch (FileAlreadyExistsException e) {
      throw OutputFile.exists(file);
    }
  }

  /** The table as CSV, without a byte-order mark. */
  static String csv(List<? extends List<? extends Object>> rows, String lineEnd) {
    return CsvText.of(
        rows.stream().map(row -> row.stream().map(TableFile::plain).toList()).toList(), lineEnd);
  }

  /** Names of files may hold line ends and whatever acts on a terminal. */
  private static String plain(Object cell) {
    return PlainText.line(cell.toString());
  }

  private static byte[] workbook(String name, List<? extends List<? extends Object>> rows)
      throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var workbook = new Workbook(bytes, "Framewright", null)) {
      var sheet = workbook.newWorksheet(name);
      for (int i = 0; i < rows.size(); i++) {
        for (int j = 0; j < rows.get(i).size(); j++) {
          if (rows.get(i).get(j) instanceof Number number) {
            sheet.value(i, j, number);
          } else {
            sheet.value(i, j, plain(rows.get(i).get(j)));
          }
        }
      }
      sheet.range(0, 0, 0, rows.getFirst().size() - 1).style().bold().set();
      sheet.freezePane(1, 1);
    }
    return bytes.toByteArray();
  }
}
