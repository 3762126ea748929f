package org.framewright.report;

import com.ibm.icu.util.LocaleData;
import com.ibm.icu.util.ULocale;
import java.util.Locale;

/** The paper that a report is set on. */
public enum Paper {
  /** ISO 216. */
  A4("A4", 210, 297),
  /** 8.5 by 11 inches (ANSI/ASME Y14.1, size A). */
  LETTER("letter", 215.9, 279.4);

  private final String css;
  private final double width;
  private final double height;

  Paper(String css, double width, double height) {
    this.css = css;
    this.width = width;
    this.height = height;
  }

  /** What is usual in the country of a language, by Unicode CLDR. */
  public static Paper usual(Locale language) {
    // In millimetres: letter is 216 by 279.
    return LocaleData.getPaperSize(ULocale.forLocale(language)).getHeight() < 290 ? LETTER : A4;
  }

  String css() {
    return css;
  }

  /** In millimetres. */
  double width() {
    return width;
  }

  /** In millimetres. */
  double height() {
    return height;
  }
}
