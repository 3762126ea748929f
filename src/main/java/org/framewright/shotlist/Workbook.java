package org.framewright.shotlist;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;

/** Reads a list out of a workbook: the sheet whose headings are best understood. */
final class Workbook {
  /** Unpacked; a workbook of a shot list takes a hundredth. */
  private static final long LARGEST = 512L << 20;

  private static final int MOST_ROWS = 200_000;

  private Workbook() {}

  static ListReading read(byte[] bytes, String source) {
    try {
      if (unpacked(bytes) > LARGEST) {
        return ListReader.refused(
            source, "it unpacks to more than a shot list can be", "Give the list itself.");
      }
      Headed best = null;
      try (var workbook =
          new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(true, true))) {
        for (var sheet : workbook.getSheets().toList()) {
          var name = source + ", sheet " + sheet.getName();
          var rows = new ArrayList<List<Cell>>();
          try (var stream = sheet.openStream()) {
            stream.limit(MOST_ROWS).map(Workbook::cells).forEach(rows::add);
          }
          rows.removeIf(row -> row.stream().allMatch(Cell::blank));
          var headed =
              Headed.of(new Grid("workbook, sheet " + sheet.getName(), rows, List.of()), name);
          if (best == null || headed.fits() > best.fits()) {
            best = headed;
          }
        }
      }
      return best == null
          ? ListReader.refused(source, "the workbook has no sheet", "Give another file.")
          : best.understand();
    } catch (IOException | RuntimeException e) {
      // The library throws what it likes at a broken file.
      return ListReader.refused(
          source,
          "it is not a sound workbook",
          "Open it in a spreadsheet program and save it again as .xlsx or .csv.");
    }
  }

  private static long unpacked(byte[] bytes) throws IOException {
    long total = 0;
    var buffer = new byte[1 << 16];
    try (var zip = ZipFile.builder().setByteArray(bytes).get()) {
      for (var entry : Collections.list(zip.getEntries())) {
        try (var content = zip.getInputStream(entry)) {
          for (int n = content.read(buffer); n >= 0 && total <= LARGEST; n = content.read(buffer)) {
            total += n;
          }
        }
      }
    }
    return total;
  }

  private static List<Cell> cells(Row row) {
    var cells = new ArrayList<Cell>();
    for (int i = 0; i < row.getCellCount(); i++) {
      var cell = row.getCell(i);
      cells.add(new Cell(cell == null ? "" : text(cell), row.getRowNum(), i + 1));
    }
    return cells;
  }

  /** As people see it: dates by ISO 8601, whole numbers without a fraction. */
  private static String text(org.dhatim.fastexcel.reader.Cell cell) {
    if (cell.getType() != CellType.NUMBER) {
      return cell.getText();
    }
    var format = cell.getDataFormatString();
    if (format != null && isDate(format)) {
      var date = cell.asDate();
      return date.toLocalTime().toSecondOfDay() == 0
          ? date.toLocalDate().toString()
          : date.toString();
    }
    var number = cell.asNumber().stripTrailingZeros().toPlainString();
    // A format such as 000 shows leading zeros, and people mean them.
    return format != null && format.matches("0+") && number.matches("\\d+")
        ? "0".repeat(Math.max(0, format.length() - number.length())) + number
        : number;
  }

  private static boolean isDate(String format) {
    var plain = format.toLowerCase(Locale.ROOT).replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.", "");
    return plain.contains("d") || plain.contains("yy");
  }
}
