package org.framewright.ui.look;

import com.ibm.icu.text.MessageFormat;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;

/** Every text for people, from the one bundle {@code org/framewright/ui/texts.properties}. */
public final class Texts {
  private final ResourceBundle bundle;
  private final Locale locale;

  /** Read once each; not for several threads at a time. */
  private final Map<String, MessageFormat> formats = new ConcurrentHashMap<>();

  private Texts(ResourceBundle bundle, Locale locale) {
    this.bundle = bundle;
    this.locale = locale;
  }

  /** The texts for a language; English where there are none. */
  public static Texts in(Locale locale) {
    return new Texts(ResourceBundle.getBundle("org.framewright.ui.texts", locale), locale);
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
    var format = formats.computeIfAbsent(key, this::format);
    synchronized (format) {
      return format.format(values);
    }
  }

  private MessageFormat format(String key) {
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

  /** The language that numbers and times are written for. */
  public Locale locale() {
    return locale;
  }
}
