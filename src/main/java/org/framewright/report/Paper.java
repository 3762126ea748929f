package org.framewright.report;

import com.ibm.icu.util.LocaleData;
import com.ibm.icu.util.ULocale;
import java.util.Locale;

/** The paper that a report is set on. */
public enum Paper {
  A4("A4"),
  LETTER("letter");

  private final String css;

  Paper(String css) {
    this.css = css;
  }

  /** What is usual in the country of a language, by Unicode CLDR. */
  public static Paper usual(Locale language) {
    // In millimetres: letter is 216 by 279.
    return LocaleData.getPaperSize(ULocale.forLocale(language)).getHeight() < 290 ? LETTER : A4;
  }

  String css() {
    return css;
  }
}
