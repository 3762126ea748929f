package org.framewright.handoff;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.Optional;
import org.framewright.handoff.metadata.FieldWords;
import org.framewright.naming.Convention;
import org.framewright.naming.FieldType;

/**
 * What a convention's fields say of a select, in words: as people gave it, or in the shape that is
 * asked for. Each date has its year.
 *
 * @param values by field
 * @param day when the frame was taken, which says best what a date is
 */
record SelectFields(Convention convention, Map<String, String> values, Optional<LocalDate> day)
    implements FieldWords {
  private static final String YEAR = "year";
  private static final int DIGITS = 4;

  @Override
  public boolean has(String field, String shape) {
    return convention.hasShape(field, shape) || isYear(field, shape);
  }

  private boolean isYear(String field, String shape) {
    return shape.equals(YEAR)
        && convention.fields().containsKey(field)
        && convention.fields().get(field).type() == FieldType.DATE;
  }

  @Override
  public Optional<String> words(String field, String shape) {
    var value = value(field);
    if (convention.hasShape(field, shape) && (isDate(field) || !shape.isEmpty())) {
      return value.flatMap(text -> convention.shown(field, shape, text));
    }
    return isYear(field, shape)
        ? value.filter(text -> text.matches("[0-9]{4}\\b.*")).map(text -> text.substring(0, DIGITS))
        : value;
  }

  private Optional<String> value(String field) {
    return isDate(field) && day.isPresent()
        ? day.map(DateTimeFormatter.ISO_LOCAL_DATE::format)
        : Optional.ofNullable(values.get(field)).filter(text -> !text.isBlank());
  }

  private boolean isDate(String field) {
    return convention.fields().containsKey(field)
        && convention.fields().get(field).type() == FieldType.DATE;
  }
}
