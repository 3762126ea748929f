package org.framewright.shotlist;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;

/** Reads a list out of a workbook: the sheet whose headings are best understood. */
final class Workbook {
  /** Columns A to XFD. Source: Microsoft, "Excel specifications and limits". */
  static final int MOST_COLUMNS = 16_384;

  /** So many rows show whether a sheet is a list. */
  private static final int SAMPLE = 1_000;

  /** The day after 9999-12-31, the last one that a spreadsheet knows. */
  private static final BigDecimal LAST_DAY = BigDecimal.valueOf(2_958_466);

  private static final Pattern NOT_FORMAT = Pattern.compile("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.");

  private Workbook() {}

  static ListReading read(byte[] bytes, String source) {
    try {
      var fault = WorkbookFile.check(bytes);
      if (fault.isPresent()) {
        return ListReader.refused(source, fault.get().what(), fault.get().remedy());
      }
      try (var workbook = open(bytes)) {
        var best = best(workbook, source);
        return best.isEmpty()
            ? ListReader.refused(source, "the workbook has no sheet", "Give another file.")
            : headed(best.get(), source, Integer.MAX_VALUE).understand();
      }
    } catch (IOException | XMLStreamException | RuntimeException e) {
      // The libraries throw what they like at a broken file.
      return ListReader.refused(
          source,
          "it is not a sound workbook",
          "Open it in a spreadsheet program and save it again as .xlsx or .csv.");
    }
  }

  private static ReadableWorkbook open(byte[] bytes) throws IOException {
    try {
      return new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(true, true));
    } catch (ExcelReaderException e) {
      // A workbook need not have styles, but the library gives no formats without them.
      return new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(false, true));
    }
  }

  private static Optional<Sheet> best(ReadableWorkbook workbook, String source) throws IOException {
    Optional<Sheet> best = Optional.empty();
    long fits = -1;
    for (var sheet : workbook.getSheets().limit(Limits.SHEETS).toList()) {
      long fit = headed(sheet, source, SAMPLE).fits();
      if (fit > fits) {
        best = Optional.of(sheet);
        fits = fit;
      }
    }
    return best;
  }

  private static Headed headed(Sheet sheet, String source, int most) throws IOException {
    var name = source + ", sheet " + Cell.brief(sheet.getName());
    var grid = new Grid.Builder(name, most);
    try (var rows = sheet.openStream()) {
      rows.limit(most).takeWhile(_ -> !grid.isFull()).forEach(row -> grid.add(cells(row, grid)));
    }
    return Headed.of(grid.build("workbook, sheet " + Cell.brief(sheet.getName()), List.of()), name);
  }

  private static List<Cell> cells(Row row, Grid.Builder grid) {
    var cells = new ArrayList<Cell>();
    for (int i = 0; i < row.getCellCount(); i++) {
      var cell = row.getCell(i);
      if (cell == null && i >= Limits.COLUMNS) {
        continue;
      }
      grid.add(cells, new Cell(cell == null ? "" : text(cell), row.getRowNum(), i + 1));
    }
    return cells;
  }

  /** As people see it: dates by ISO 8601, whole numbers without a fraction. */
  private static String text(org.dhatim.fastexcel.reader.Cell cell) {
    if (cell.getType() != CellType.NUMBER) {
      return XmlText.plain(cell.getText()).replace("\r\n", "\n").replace('\r', '\n');
    }
    var format = cell.getDataFormatString();
    if (format != null && isDate(format) && isDay(cell.asNumber())) {
      var date = cell.asDate();
      return date.toLocalTime().toSecondOfDay() == 0
          ? date.toLocalDate().toString()
          : date.toString();
    }
    var exact = cell.asNumber().stripTrailingZeros();
    // A number of a workbook has 15 digits and an exponent up to 308; written out it stays short.
    var number =
        Math.abs(exact.scale()) > 400 || exact.precision() > 400
            ? exact.round(MathContext.DECIMAL64).toString()
            : exact.toPlainString();
    // A format such as 000 shows leading zeros, and people mean them.
    return format != null && isZeros(format) && number.chars().allMatch(Character::isDigit)
        ? "0".repeat(Math.max(0, format.length() - number.length())) + number
        : number;
  }

  private static boolean isDay(BigDecimal number) {
    return number.signum() >= 0 && number.compareTo(LAST_DAY) < 0;
  }

  private static boolean isZeros(String format) {
    return !format.isEmpty() && format.length() <= 255 && format.chars().allMatch(c -> c == '0');
  }

  private static boolean isDate(String format) {
    var plain = NOT_FORMAT.matcher(format.toLowerCase(Locale.ROOT)).replaceAll("");
    return plain.contains("d") || plain.contains("yy");
  }
}
