package org.framewright.ui.settings;

import java.util.Optional;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;

/** A setting of one line of text. */
public final class TextSetting {
  /** In characters: more than any notice that is written beside a picture. */
  public static final int LONGEST = 1000;

  private TextSetting() {}

  /** What is wrong with a text as such a line; nothing where it is one. */
  public static Optional<Problem> fault(String text, int longest) {
    if (text.codePointCount(0, text.length()) > longest) {
      return Optional.of(
          new Problem(
              "this has " + text.codePointCount(0, text.length()) + " characters",
              "Take at most " + longest + "."));
    }
    return PlainText.line(text).equals(text)
        ? Optional.empty()
        : Optional.of(
            new Problem(
                "this has a line break or a character that cannot be shown",
                "Write it in one line, without them."));
  }

  /** What is kept under a key; an empty text where nothing is, or what is there is no such line. */
  public static Kept<String> kept(Preferences preferences, String key, int longest) {
    return switch (preferences.any(key).orElse("")) {
      case String text ->
          fault(text, longest)
              .map(problem -> new Kept<>("", Optional.of(inTheFile(key, problem))))
              .orElseGet(() -> new Kept<>(text, Optional.empty()));
      default ->
          new Kept<>(
              "", Optional.of(inTheFile(key, new Problem("this is no text", "Write it anew."))));
    };
  }

  /** Says of a problem that it is with what the settings' file says. */
  static Problem inTheFile(String key, Problem problem) {
    return new Problem(
        "the settings\u2019 file says something else for "
            + key
            + ", which is not used: "
            + problem.sentence(),
        problem.remedy());
  }
}
