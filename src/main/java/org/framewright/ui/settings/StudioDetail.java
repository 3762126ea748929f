package org.framewright.ui.settings;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.base.Problem;
import org.framewright.handoff.metadata.Studio;
import org.framewright.handoff.metadata.Studio.Detail;

/**
 * What a person says once of the own studio. It is offered as the first value where a job's
 * convention has a field of that name, and goes into the metadata of packages. The words are those
 * of the IPTC Photo Metadata Standard (Creator, Creator's Contact Info, Credit Line, Copyright
 * Notice, Rights Usage Terms).
 */
public enum StudioDetail {
  PHOTOGRAPHER(Detail.PHOTOGRAPHER, "photographer", "creator"),
  POSITION(Detail.POSITION),
  STUDIO(Detail.STUDIO, "studio"),
  MAIL(Detail.MAIL, "mail", "email", "contact"),
  PHONE(Detail.PHONE, "phone", "telephone"),
  WEBSITE(Detail.WEBSITE, "website", "web"),
  CREDIT(Detail.CREDIT, "credit", "creditline"),
  SOURCE(Detail.SOURCE),
  COPYRIGHT(Detail.COPYRIGHT, "copyright", "copyrightnotice"),
  OWNER(Detail.OWNER, "copyrightowner"),
  TERMS(Detail.TERMS, "terms", "usage", "usageterms"),
  STATEMENT(Detail.STATEMENT),
  LOGO(Detail.LOGO);

  private final Detail detail;

  /** How conventions call such a field, in small letters alone. */
  @SuppressWarnings("ImmutableEnumChecker") // List.of never changes.
  private final List<String> fields;

  StudioDetail(Detail detail, String... fields) {
    this.detail = detail;
    this.fields = List.of(fields);
  }

  /** Under which key it is kept. */
  public String key() {
    return detail.key();
  }

  /** What is kept; empty where nothing is. */
  public Kept<String> kept(Preferences preferences) {
    return TextSetting.kept(preferences, key(), TextSetting.LONGEST);
  }

  /** What is wrong with a line of text as that; nothing where nothing is. */
  public Optional<Problem> problem(String text) {
    return detail.problem(text);
  }

  /** What the settings say of the studio, for the metadata of a package. */
  public static Studio.Reading studio(Preferences preferences) {
    var kept = new HashMap<String, Object>();
    for (var detail : Detail.values()) {
      preferences.any(detail.key()).ifPresent(value -> kept.put(detail.key(), value));
    }
    return Studio.of(kept, preferences.file().toString());
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
