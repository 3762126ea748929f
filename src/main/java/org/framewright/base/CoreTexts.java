package org.framewright.base;

import com.ibm.icu.number.NumberFormatter;
import com.ibm.icu.number.Precision;
import com.ibm.icu.text.MessageFormat;
import com.ibm.icu.util.MeasureUnit;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What the core says, in a language: from the bundles {@code org/framewright/core*.properties}, in
 * which the English text is the key. What is not translated is said in English.
 */
public final class CoreTexts {
  private final ResourceBundle bundle;
  private final Locale locale;

  /** Read once each; not for several threads at a time. */
  private final Map<String, MessageFormat> messages = new ConcurrentHashMap<>();

  private CoreTexts(ResourceBundle bundle, Locale locale) {
    this.bundle = bundle;
    this.locale = locale;
  }

  /** The texts for a language; what the machine is set to plays no part. */
  public static CoreTexts in(Locale locale) {
    var bundle =
        ResourceBundle.getBundle(
            "org.framewright.core",
            locale,
            // Else a machine that speaks German would turn English texts into German ones.
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    var spoken = bundle.getLocale().getLanguage();
    return new CoreTexts(
        bundle,
        new Locale.Builder()
            .setLanguage(spoken.isEmpty() ? "en" : spoken)
            .setRegion(locale.getCountry())
            .build());
  }

  /** As {@link ByteSizes} rounds it, in the units of the language. */
  private String size(Text.Size size) {
    long bytes = size.bytes();
    boolean small = bytes < ByteSizes.MEGA && !size.inMegabytes();
    boolean large = bytes >= ByteSizes.GIGA && !size.inMegabytes();
    var formatter = NumberFormatter.withLocale(locale).unitWidth(NumberFormatter.UnitWidth.SHORT);
    return large
        ? formatter
            .unit(MeasureUnit.GIGABYTE)
            .precision(Precision.fixedFraction(1))
            .roundingMode(RoundingMode.HALF_UP)
            .format(bytes / 1e9)
            .toString()
        : formatter
            .unit(small ? MeasureUnit.KILOBYTE : MeasureUnit.MEGABYTE)
            .format(Math.ceilDiv(bytes, small ? ByteSizes.KILO : ByteSizes.MEGA))
            .toString();
  }

  /** The language of the texts, in the country whose ways of writing hold. */
  public Locale locale() {
    return locale;
  }

  /** A text in this language; in English where it is not translated. */
  public String say(Text text) {
    var values =
        text.values().stream()
            .map(
                value ->
                    switch (value) {
                      case Text inner -> say(inner);
                      case Text.Grouped grouped -> grouped.number();
                      case Text.Size size -> size(size);
                      default -> value;
                    })
            .toArray();
    if (!bundle.containsKey(text.many())) {
      return new Text(text.one(), text.many(), List.of(values)).english();
    }
    if (values.length == 0) {
      return bundle.getString(text.many());
    }
    var message =
        messages.computeIfAbsent(
            text.many(), key -> new MessageFormat(bundle.getString(key), locale));
    try {
      synchronized (message) {
        return message.format(values);
      }
    } catch (IllegalArgumentException e) {
      // It was told by another computer, and cannot be counted by what it says.
      return new Text(text.one(), text.many(), List.of(values)).english();
    }
  }
}
