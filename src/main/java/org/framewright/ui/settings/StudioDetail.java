package org.framewright.ui.settings;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a person says once of the own studio. It is offered as the first value where a job's
 * convention has a field of that name, and goes nowhere by itself. The words are those of the IPTC
 * Photo Metadata Standard (Creator, Creator's Contact Info, Credit Line, Copyright Notice, Rights
 * Usage Terms).
 */
public enum StudioDetail {
  PHOTOGRAPHER,
  STUDIO,
  CONTACT,
  CREDIT,
  COPYRIGHT,
  TERMS;

  /** How conventions call such a field, in small letters alone. */
  private List<String> fields() {
    return switch (this) {
      case PHOTOGRAPHER -> List.of("photographer", "creator");
      case STUDIO -> List.of("studio");
      case CONTACT -> List.of("contact");
      case CREDIT -> List.of("credit", "creditline");
      case COPYRIGHT -> List.of("copyright", "copyrightnotice");
      case TERMS -> List.of("terms", "usage", "usageterms");
    };
  }

  /** Under which key it is kept. */
  public String key() {
    return "studio." + name().toLowerCase(Locale.ROOT);
  }

  /** What is kept; empty where nothing is. */
  public Kept<String> kept(Preferences preferences) {
    return TextSetting.kept(preferences, key(), TextSetting.LONGEST);
  }

  /** What to offer first for a convention's field of that name. */
  public static Optional<String> firstValue(Preferences preferences, String field) {
    var plain = field.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
    return Stream.of(values())
        .filter(detail -> detail.fields().contains(plain))
        .map(detail -> detail.kept(preferences).value())
        .filter(text -> !text.isEmpty())
        .findFirst();
  }
}
