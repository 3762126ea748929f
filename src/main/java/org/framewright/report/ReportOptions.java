package org.framewright.report;

import java.util.Locale;
import org.framewright.day.DayHours;

/**
 * How a report is to be made.
 *
 * @param kind what it tells
 * @param paper for a PDF
 * @param language of its words, in the country whose ways of writing dates hold
 * @param hours the hours of work that the forecast reckons with
 * @param letterhead who sends it
 */
public record ReportOptions(
    ReportKind kind, Paper paper, Locale language, DayHours hours, Letterhead letterhead) {
  Stationery stationery() {
    return new Stationery(paper, language, letterhead);
  }
}
