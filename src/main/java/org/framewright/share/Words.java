package org.framewright.share;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.framewright.base.CoreTexts;
import org.framewright.base.Text;

/** Texts in the language that a page asks for. */
final class Words {
  /** The first is for whoever asks for none of them. */
  private static final List<Locale> LANGUAGES =
      List.of(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH);

  private static final int LONGEST_HEADER = 200;

  private final Map<Locale, CoreTexts> texts =
      LANGUAGES.stream().collect(Collectors.toMap(Function.identity(), CoreTexts::in));

  /**
   * How to say a text.
   *
   * @param accepted a header {@code Accept-Language} (RFC 9110, section 12.5.4); null where there
   *     is none
   */
  Function<Text, String> in(String accepted) {
    return texts.get(language(accepted))::say;
  }

  private static Locale language(String accepted) {
    if (accepted == null || accepted.length() > LONGEST_HEADER) {
      return LANGUAGES.getFirst();
    }
    try {
      var found = Locale.lookup(Locale.LanguageRange.parse(accepted), LANGUAGES);
      return found == null ? LANGUAGES.getFirst() : found;
    } catch (IllegalArgumentException e) {
      return LANGUAGES.getFirst();
    }
  }
}
