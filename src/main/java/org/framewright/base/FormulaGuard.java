package org.framewright.base;

/**
 * Keeps text of a CSV file from running as a formula where a spreadsheet opens it: an apostrophe is
 * put before what such programs take for the beginning of one. Source: OWASP, "CSV Injection",
 * which names {@code = + - @}, tab, carriage return, line feed and the full-width forms.
 *
 * <p>A spreadsheet whose separator is the semicolon or the tab sees cells that begin inside ours,
 * and so does one that loses count of quotation marks at a line end; an apostrophe stands there,
 * too. {@link #without} is the reverse of {@link #with} for every text.
 */
public final class FormulaGuard {
  private static final String SIGNS = "=+-@\uFF1D\uFF0B\uFF0D\uFF20";
  private static final String SPACE = "\t\r\n";
  private static final char GUARD = '\'';

  private FormulaGuard() {}

  /** The text with an apostrophe wherever a formula could begin. */
  public static String with(String text) {
    var guarded = new StringBuilder(text.length() + 1);
    for (int i = 0; i < text.length(); i++) {
      if (startsCell(text, i) && beginsFormula(text, i, i == 0)) {
        guarded.append(GUARD);
      }
      guarded.append(text.charAt(i));
    }
    return guarded.toString();
  }

  /** The text without the apostrophes that {@link #with} puts. */
  public static String without(String guarded) {
    if (guarded.indexOf(GUARD) < 0) {
      return guarded;
    }
    var text = new StringBuilder(guarded.length());
    for (int i = 0; i < guarded.length(); i++) {
      boolean isGuard =
          guarded.charAt(i) == GUARD
              && startsCell(guarded, i)
              && beginsFormula(guarded, i + 1, i == 0);
      if (!isGuard) {
        text.append(guarded.charAt(i));
      }
    }
    return text.toString();
  }

  private static boolean startsCell(String text, int at) {
    return at == 0 || text.charAt(at - 1) == ';' || SPACE.indexOf(text.charAt(at - 1)) >= 0;
  }

  /** Quotes before it count as nothing, so that an apostrophe of the text's own is not lost. */
  private static boolean beginsFormula(String text, int from, boolean first) {
    int at = from;
    while (at < text.length() && (text.charAt(at) == GUARD || text.charAt(at) == '"')) {
      at++;
    }
    return at < text.length()
        && (SIGNS.indexOf(text.charAt(at)) >= 0 || (first && SPACE.indexOf(text.charAt(at)) >= 0));
  }
}
