package org.framewright.ui.help;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.scene.input.KeyCode;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;

/** The keys that the guide names, as they are written on the keyboards of a language. */
record KeyWords(Texts texts) {
  private static final Texts ENGLISH = Texts.in(Locale.ENGLISH);
  private static final List<String> NAMED =
      List.of(
          "control",
          "alt",
          "shift",
          "BACK_SPACE",
          "DELETE",
          "INSERT",
          "ENTER",
          "ESCAPE",
          "SPACE",
          "TAB",
          "HOME",
          "END",
          "PAGE_UP",
          "PAGE_DOWN");

  /** {@code Ctrl+Space} becomes {@code Strg+Leertaste}. */
  String written(String key) {
    // A plus sign that is a key itself stands last.
    return Stream.of(key.split("(?<=\\w)\\+(?=.)", -1))
        .map(this::word)
        .collect(Collectors.joining("+"));
  }

  private String word(String part) {
    return NAMED.stream()
        .map(name -> "key." + name)
        .filter(name -> ENGLISH.get(name).equals(part))
        .findFirst()
        .map(texts::get)
        .orElseGet(() -> sign(part));
  }

  /** What the toolkit writes with a sign. */
  private String sign(String part) {
    return switch (part) {
      case "-" -> Keys.text(Keys.plain(KeyCode.MINUS), texts);
      case "Left" -> Keys.text(Keys.plain(KeyCode.LEFT), texts);
      case "Right" -> Keys.text(Keys.plain(KeyCode.RIGHT), texts);
      case "Up" -> Keys.text(Keys.plain(KeyCode.UP), texts);
      case "Down" -> Keys.text(Keys.plain(KeyCode.DOWN), texts);
      default -> part;
    };
  }
}
