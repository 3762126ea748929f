package org.framewright.ui.look;

import com.ibm.icu.text.MessageFormat;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.framewright.base.CoreTexts;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * Every text for people, from the bundles {@code org/framewright/ui/texts*.properties} and, for
 * what the core says, {@code org/framewright/core*.properties}: English, German and French; English
 * for every other language.
 */
public final class Texts {
  private final ResourceBundle bundle;
  private final CoreTexts core;
  private final Locale locale;
  private final Formats formats;

  /** Read once each; not for several threads at a time. */
  private final Map<String, MessageFormat> messages = new ConcurrentHashMap<>();

  private Texts(ResourceBundle bundle, CoreTexts core, Locale locale) {
    this.bundle = bundle;
    this.core = core;
    this.locale = locale;
    this.formats = new Formats(this);
  }

  /**
   * The texts for a language; English where there are none. The country says how dates, times and
   * numbers are written. What the machine is set to plays no part.
   */
  public static Texts in(Locale locale) {
    var bundle = bundle("org.framewright.ui.texts", locale);
    var spoken = bundle.getLocale().getLanguage();
    return new Texts(
        bundle,
        CoreTexts.in(locale),
        new Locale.Builder()
            .setLanguage(spoken.isEmpty() ? "en" : spoken)
            .setRegion(locale.getCountry())
            .build());
  }

  private static ResourceBundle bundle(String name, Locale locale) {
    return ResourceBundle.getBundle(
        name,
        locale,
        // Else a machine that speaks German would turn English texts into German ones.
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** A text as it stands. */
  public String get(String key) {
    return bundle.getString(key);
  }

  /**
   * A text with values, written as ICU message format: {@code {0,plural,one{# file}other{#
   * files}}}.
   */
  public String get(String key, Object... values) {
    var message =
        messages.computeIfAbsent(key, _ -> new MessageFormat(bundle.getString(key), locale));
    synchronized (message) {
      return message.format(values);
    }
  }

  /** Whether there is such a text. */
  public boolean has(String key) {
    try {
      return !bundle.getString(key).isEmpty();
    } catch (MissingResourceException _) {
      return false;
    }
  }

  /** A text of the core in this language; in English where it is not translated. */
  public String say(Text text) {
    return core.say(text);
  }

  /** What is wrong. */
  public String what(Problem problem) {
    return say(problem.fault());
  }

  /** Where it is. */
  public String where(Problem problem) {
    return say(problem.place());
  }

  /** What to do about it; empty where nothing can be done. */
  public String remedy(Problem problem) {
    return say(problem.fix());
  }

  /** Where, and what is wrong. */
  public String sentence(Problem problem) {
    return problem.where().isBlank()
        ? what(problem)
        : get("problem.at", where(problem), what(problem));
  }

  /** Where, what is wrong and what to do about it. */
  public String sentences(Problem problem) {
    return problem.fix().isEmpty()
        ? sentence(problem)
        : get("problem.full", sentence(problem), remedy(problem));
  }

  /** Parts that are said one after the other; an empty one is left out. */
  public String apart(String... parts) {
    return Stream.of(parts)
        .filter(part -> !part.isBlank())
        .reduce((before, part) -> get("list.apart", before, part))
        .orElse("");
  }

  /** A text that begins in small letters as a sentence of its own. */
  public String sentence(String text) {
    if (text.isEmpty()) {
      return text;
    }
    int first = text.offsetByCodePoints(0, 1);
    return text.substring(0, first).toUpperCase(locale()) + text.substring(first);
  }

  /** Dates, times, numbers and lists as the language writes them. */
  public Formats formats() {
    return formats;
  }

  /** The language of the texts, in the country whose ways of writing hold. */
  public Locale locale() {
    return locale;
  }
}
