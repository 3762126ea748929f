package org.framewright.ui.settings;

import com.ibm.icu.lang.UCharacter;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The languages that the app speaks; a choice holds from its next start on. */
public enum Language {
  /** As the system has it, English where the app does not speak that. */
  SYSTEM(""),
  ENGLISH("en"),
  GERMAN("de"),
  FRENCH("fr");

  private static final String KEY = "language";

  private final String code;

  Language(String code) {
    this.code = code;
  }

  /** What was chosen; the system's where nothing was, or what is kept is no language of these. */
  public static Language kept(Preferences preferences) {
    return preferences.get(KEY).stream()
        .flatMap(kept -> Stream.of(values()).filter(one -> one != SYSTEM && one.code.equals(kept)))
        .findFirst()
        .orElse(SYSTEM);
  }

  /** Keeps the choice. */
  public void keep(Preferences preferences) {
    if (this == SYSTEM) {
      preferences.remove(KEY);
    } else {
      preferences.put(KEY, code);
    }
  }

  /** The language, in the country of the system: that says how dates and numbers are written. */
  public Locale on(Locale system) {
    return this == SYSTEM
        ? system
        : new Locale.Builder().setLanguage(code).setRegion(system.getCountry()).build();
  }

  /** What those who speak it call it; empty for the system's. */
  public Optional<String> ownName() {
    var locale = Locale.of(code);
    return this == SYSTEM
        ? Optional.empty()
        : Optional.of(UCharacter.toTitleCase(locale, locale.getDisplayLanguage(locale), null));
  }
}
