package org.framewright.ui.copies;

import java.util.Locale;
import org.framewright.copies.Verdict;
import org.framewright.ui.look.Texts;

/** Whether a card may be cleared, worst first. */
enum Answer {
  /** Something is missing. */
  NOT_YET,
  /** Something could not be established. */
  CANNOT_TELL,
  /** It may. */
  MAY_BE_CLEARED;

  static Answer of(Verdict verdict) {
    return switch (verdict) {
      case Verdict.NotYet _ -> NOT_YET;
      case Verdict.CannotTell _ -> CANNOT_TELL;
      case Verdict.MayClear _ -> MAY_BE_CLEARED;
    };
  }

  /** The one of a word of the log; what is no word of it tells nothing. */
  static Answer of(String word) {
    for (var answer : values()) {
      if (answer.word().equals(word)) {
        return answer;
      }
    }
    return CANNOT_TELL;
  }

  /** As in the keys of texts and styles. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** For people. */
  String word(Texts texts) {
    return texts.get("copies.answer." + word());
  }
}
