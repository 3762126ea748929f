package org.framewright.ui.settings;

import java.util.Optional;
import org.framewright.base.PlainText;

/** A setting of one line of text. */
public final class TextSetting {
  /** In characters: more than any notice that is written beside a picture. */
  public static final int LONGEST = 1000;

  private TextSetting() {}

  /** What is wrong with a text as such a line; nothing where it is one. */
  public static Optional<SettingFault> fault(String text, int longest) {
    int length = text.codePointCount(0, text.length());
    if (length > longest) {
      return Optional.of(new SettingFault("tooLong", length, longest));
    }
    return PlainText.line(text).equals(text)
        ? Optional.empty()
        : Optional.of(new SettingFault("control"));
  }

  /** What is kept under a key; an empty text where nothing is, or what is there is no such line. */
  public static Kept<String> kept(Preferences preferences, String key, int longest) {
    return switch (preferences.any(key).orElse("")) {
      case String text ->
          fault(text, longest)
              .map(fault -> new Kept<>("", Optional.of(fault.inTheFile(key))))
              .orElseGet(() -> new Kept<>(text, Optional.empty()));
      default -> new Kept<>("", Optional.of(new SettingFault("noText").inTheFile(key)));
    };
  }
}
