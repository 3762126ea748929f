package org.framewright.report;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What kind of file a report is; its name tells. */
public enum ReportForm {
  /** Set on paper. */
  PDF,
  /** A page for a browser, with its pictures inside. */
  HTML,
  /** A workbook, a sheet for each table. */
  XLSX,
  /** The main table. */
  CSV;

  /** The form that a file's name ends with; nothing for any other ending. */
  public static Optional<ReportForm> of(Path file) {
    var name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(form -> name.endsWith("." + form.word())).findFirst();
  }

  /** The ending: {@code pdf}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
