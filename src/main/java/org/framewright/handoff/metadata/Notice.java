package org.framewright.handoff.metadata;

import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A text of the settings with fields of the convention in braces: {@code © {day.year} Nova}. */
final class Notice {
  private static final Pattern FIELD = Pattern.compile("\\{([^{}.\\s]+)(?:\\.([^{}.\\s]+))?}");
  private static final Pattern BRACES = Pattern.compile("\\{[^{}]*}?|}");

  private Notice() {}

  /** The first braces that can name no field of any convention. */
  static Optional<String> fault(String text) {
    return BRACES
        .matcher(text)
        .results()
        .map(MatchResult::group)
        .filter(part -> !FIELD.matcher(part).matches())
        .findFirst();
  }

  /** The first field that a convention does not have. */
  static Optional<String> unknown(String text, FieldWords fields) {
    return FIELD
        .matcher(text)
        .results()
        .filter(field -> !fields.has(field.group(1), shape(field)))
        .map(MatchResult::group)
        .findFirst();
  }

  private static String shape(MatchResult field) {
    return field.group(2) == null ? "" : field.group(2);
  }

  /** The text with its fields filled in; what is not known of a select leaves no gap. */
  static String filled(String text, FieldWords fields) {
    return FIELD
        .matcher(text)
        .replaceAll(
            field ->
                Matcher.quoteReplacement(fields.words(field.group(1), shape(field)).orElse("")))
        .replaceAll(" {2,}", " ")
        .strip();
  }
}
