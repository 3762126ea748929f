package org.framewright.shotlist;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.reader.CellType;

/** A workbook's cells as people see them: dates by ISO 8601, whole numbers without a fraction. */
final class CellText {
  /** The day after 9999-12-31, the last one that a spreadsheet knows. */
  private static final BigDecimal LAST_DAY = BigDecimal.valueOf(2_958_466);

  private static final Pattern NOT_FORMAT = Pattern.compile("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.");

  /** ECMA-376, part 1, section 18.17.3. */
  private static final Set<String> ERRORS =
      Set.of("#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A");

  /** A spreadsheet keeps 15 digits of a number. Source: Microsoft, "Excel specifications". */
  private static final BigDecimal MOST_DIGITS = BigDecimal.TEN.pow(15);

  private final boolean since1904;

  /**
   * @param since1904 whether the workbook's days count from 1904, else from 1900
   */
  CellText(boolean since1904) {
    this.since1904 = since1904;
  }

  /**
   * A cell, of a formula the value that was saved with it.
   *
   * @param row from 1
   * @param column from 1
   */
  Cell of(org.dhatim.fastexcel.reader.Cell cell, int row, int column) {
    if (cell.getValue() instanceof BigDecimal number) {
      return number(number, cell.getDataFormatString(), row, column);
    }
    var text = XmlText.plain(cell.getText()).replace("\r\n", "\n").replace('\r', '\n');
    boolean isFormula = cell.getType() == CellType.FORMULA;
    if (cell.getType() == CellType.ERROR || (isFormula && ERRORS.contains(text))) {
      return new Cell(text, row, column, Cell.Kind.ERROR);
    }
    boolean hasNoValue = isFormula && text.isEmpty() && cell.getValue() == null;
    return new Cell(text, row, column, hasNoValue ? Cell.Kind.NO_VALUE : Cell.Kind.PLAIN);
  }

  private Cell number(BigDecimal number, String format, int row, int column) {
    if (format != null && isDate(format) && isDay(number)) {
      var date = date(number);
      var text =
          date.toLocalTime().toSecondOfDay() == 0 ? date.toLocalDate().toString() : date.toString();
      return new Cell(text, row, column, Cell.Kind.DATE);
    }
    boolean isLong = number.abs().compareTo(MOST_DIGITS) >= 0;
    return new Cell(
        text(number, format), row, column, isLong ? Cell.Kind.LONG_NUMBER : Cell.Kind.PLAIN);
  }

  private static String text(BigDecimal number, String format) {
    var exact = number.stripTrailingZeros();
    // A number of a workbook has 15 digits and an exponent up to 308; written out it stays short.
    var text =
        Math.abs(exact.scale()) > 400 || exact.precision() > 400
            ? exact.round(MathContext.DECIMAL64).toString()
            : exact.toPlainString();
    // A format such as 000 shows leading zeros, and people mean them.
    return format != null && isZeros(format) && text.chars().allMatch(Character::isDigit)
        ? "0".repeat(Math.max(0, format.length() - text.length())) + text
        : text;
  }

  /** The day and time of a number, to the second (ECMA-376, part 1, section 18.17.4.1). */
  private LocalDateTime date(BigDecimal number) {
    // The 1900 system has a 29 February 1900, which there was not.
    var first =
        since1904
            ? LocalDate.of(1904, 1, 1)
            : LocalDate.of(1899, 12, number.compareTo(BigDecimal.valueOf(60)) < 0 ? 31 : 30);
    long seconds = Math.round(number.doubleValue() * Duration.ofDays(1).toSeconds());
    return first.atStartOfDay().plusSeconds(seconds);
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
