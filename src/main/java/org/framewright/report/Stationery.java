package org.framewright.report;

import java.util.Locale;

/**
 * What a report is written on.
 *
 * @param paper for a PDF
 * @param language of its words, in the country whose ways of writing dates hold
 * @param letterhead who sends it
 */
public record Stationery(Paper paper, Locale language, Letterhead letterhead) {
  /** On the paper that is usual where the language is spoken so. */
  public static Stationery usual(Locale language, Letterhead letterhead) {
    return new Stationery(Paper.usual(language), language, letterhead);
  }
}
