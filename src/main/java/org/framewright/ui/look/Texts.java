package org.framewright.ui.look;

import com.ibm.icu.text.MessageFormat;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * Every text for people, from the bundles {@code org/framewright/ui/texts*.properties}: English,
 * German and French; English for every other language.
 */
public final class Texts {
  private final ResourceBundle bundle;
  private final Locale locale;
  private final Formats formats;

  /** Read once each; not for several threads at a time. */
  private final Map<String, MessageFormat> messages = new ConcurrentHashMap<>();

  private Texts(ResourceBundle bundle, Locale locale) {
    this.bundle = bundle;
    this.locale = locale;
    this.formats = new Formats(this);
  }

  /**
   * The texts for a language; English where there are none. The country says how dates, times and
   * numbers are written. What the machine is set to plays no part.
   */
  public static Texts in(Locale locale) {
    var bundle =
        ResourceBundle.getBundle(
            "org.framewright.ui.texts",
            locale,
            // Else a machine that speaks German would turn English texts into German ones.
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    var spoken = bundle.getLocale().getLanguage();
    return new Texts(
        bundle,
        new Locale.Builder()
            .setLanguage(spoken.isEmpty() ? "en" : spoken)
            .setRegion(locale.getCountry())
            .build());
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
    var message = messages.computeIfAbsent(key, this::message);
    synchronized (message) {
      return message.format(values);
    }
  }

  private MessageFormat message(String key) {
    return new MessageFormat(bundle.getString(key), locale);
  }

  /** Whether there is such a text. */
  public boolean has(String key) {
    try {
      return !bundle.getString(key).isEmpty();
    } catch (MissingResourceException _) {
      return false;
    }
  }

  /** Parts that are said one after the other; an empty one is left out. */
  public String apart(String... parts) {
    return Stream.of(parts)
        .filter(part -> !part.isBlank())
        .reduce((before, part) -> get("list.apart", before, part))
        .orElse("");
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
