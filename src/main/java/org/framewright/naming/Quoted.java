package org.framewright.naming;

import org.framewright.base.PlainText;
import org.framewright.base.Text;

/** Other people's text inside a message: one line, nothing that acts on a terminal, not long. */
final class Quoted {
  private static final int LONGEST = 80;

  private Quoted() {}

  /** The text in quotation marks. */
  static Text said(String text) {
    return Text.of("“{0}”", bare(text));
  }

  static String bare(String text) {
    return PlainText.line(PlainText.start(text, LONGEST))
        + (text.length() <= LONGEST ? "" : " ...");
  }
}
