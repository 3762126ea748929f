package org.framewright.report;

import java.util.List;

/** One kind of report: the same facts as a page and as tables. */
sealed interface Section
    permits DaySection, SheetSection, NextSection, SignOffSection, SelectSection, SlateSection {

  /** Writes the page. */
  void write(Page page);

  /** The tables; the first is the main one. */
  List<Table> tables(Words words);

  static Section of(JobFacts facts, ReportOptions options) {
    return switch (options.kind()) {
      case DAY -> new DaySection(facts, options);
      case SHEET -> new SheetSection(facts, options);
      case NEXT -> new NextSection(facts, options);
      case SIGN_OFF -> new SignOffSection(facts, options);
    };
  }
}
