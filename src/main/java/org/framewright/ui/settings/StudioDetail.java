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
  PHOTOGRAPHER("photographer", "creator"),
  STUDIO("studio"),
  CONTACT("contact"),
  CREDIT("credit", "creditline"),
  COPYRIGHT("copyright", "copyrightnotice"),
  TERMS("terms", "usage", "usageterms");

  private final List<String> fields;

  StudioDetail(String... fields) {
    this.fields = List.of(fields);
  }

  /** Under which key it is kept. */
  public String key() {
    return "studio." + name().toLowerCase(Locale.ROOT);
  }

  /** What is kept; empty where nothing is. */
  public Kept<String> kept(Preferences preferences) {
    return Line.kept(preferences, key(), Line.LONGEST);
  }

  /** What to offer first for a convention's field of that name. */
  public static Optional<String> firstValue(Preferences preferences, String field) {
    var plain = field.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
    return Stream.of(values())
        .filter(detail -> detail.fields.contains(plain))
        .map(detail -> detail.kept(preferences).value())
        .filter(text -> !text.isEmpty())
        .findFirst();
  }
}
