package org.framewright.report;

import java.util.Locale;
import org.framewright.base.Text;

/** What a report tells. */
public enum ReportKind {
  /** How the day went. */
  DAY,
  /** Every frame, setup by setup. */
  SHEET,
  /** What is to be shot next, in order. */
  NEXT,
  /** Who approved what, and when. */
  SIGN_OFF;

  /** As commands write it: {@code sign-off}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Its title. */
  Text title() {
    return switch (this) {
      case DAY -> Text.of("Day report");
      case SHEET -> Text.of("Contact sheet");
      case NEXT -> Text.of("Next day");
      case SIGN_OFF -> Text.of("Sign-offs");
    };
  }
}
