package org.framewright.ui.handoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.base.PlainText;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.ui.look.Texts;

/**
 * Something that a check of a package found.
 *
 * @param file which file, or which list and line
 * @param more what is wrong where the kind does not say it
 */
record CheckLine(Kind kind, String file, String more) {

  /** How a file stands, the worst first. */
  enum Kind {
    DIFFERENT,
    MISSING,
    FAULT,
    NOT_FETCHED,
    UNLISTED,
    NOTE;

    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  static List<CheckLine> of(PackageCheck check, Texts texts) {
    var lines = new ArrayList<CheckLine>();
    check
        .different()
        .forEach(file -> lines.add(new CheckLine(Kind.DIFFERENT, PlainText.line(file), "")));
    check
        .missing()
        .forEach(file -> lines.add(new CheckLine(Kind.MISSING, PlainText.line(file), "")));
    check
        .faults()
        .forEach(
            one ->
                lines.add(
                    new CheckLine(
                        Kind.FAULT,
                        PlainText.line(texts.where(one)),
                        PlainText.line(texts.what(one)))));
    check
        .notFetched()
        .forEach(file -> lines.add(new CheckLine(Kind.NOT_FETCHED, PlainText.line(file), "")));
    check
        .unlisted()
        .forEach(file -> lines.add(new CheckLine(Kind.UNLISTED, PlainText.line(file), "")));
    check
        .warnings()
        .forEach(
            one ->
                lines.add(
                    new CheckLine(
                        Kind.NOTE,
                        PlainText.line(texts.where(one)),
                        PlainText.line(texts.what(one)))));
    return lines;
  }
}
