package org.framewright.ui.help;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
    return Stream.of(key.split("(?<=\\w)\\+(?=.)"))
        .map(this::word)
        .collect(Collectors.joining("+"));
  }

  private String word(String part) {
    return NAMED.stream()
        .map(name -> "key." + name)
        .filter(name -> ENGLISH.get(name).equals(part))
        .findFirst()
        .map(texts::get)
        .orElse(part.equals("-") ? "\u2212" : part);
  }
}
