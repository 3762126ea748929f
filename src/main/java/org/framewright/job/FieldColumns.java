package org.framewright.job;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import org.framewright.naming.Field;
import org.framewright.shotlist.Setup;

/**
 * Finds the column of a shot list that fills a field: the one headed by the field's name or by the
 * label that people see, whatever its letter case and punctuation.
 */
public final class FieldColumns {
  private static final Pattern NO_LETTER = Pattern.compile("[^\\p{L}\\p{N}]");

  /** Thousands of setups have the same few headings. */
  private final Map<String, String> plain = new ConcurrentHashMap<>();

  /** What a setup's column says for a field; empty where it has none, or a blank cell. */
  public Optional<String> value(Setup setup, Field field) {
    return value(setup, plain(field.name())).or(() -> value(setup, plain(field.label())));
  }

  /** Whether a column of that heading fills a field. */
  boolean isHeaded(String heading, Field field) {
    var plain = plain(heading);
    return plain.equals(plain(field.name())) || plain.equals(plain(field.label()));
  }

  private Optional<String> value(Setup setup, String wanted) {
    for (var column : setup.columns().entrySet()) {
      if (plain(column.getKey()).equals(wanted) && !column.getValue().isBlank()) {
        return Optional.of(column.getValue());
      }
    }
    return Optional.empty();
  }

  private String plain(String heading) {
    return plain.computeIfAbsent(
        heading, text -> NO_LETTER.matcher(text.toLowerCase(Locale.ROOT)).replaceAll(""));
  }
}
