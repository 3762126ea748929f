package org.framewright.naming;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.framewright.naming.DatePattern.Unit;

/**
 * A date, a time of day or both as ISO 8601 writes them, to any precision.
 *
 * @param values the units that it has
 * @param fraction the digits of a fraction of a second; may be empty
 * @param zone the zone as written; empty where there is none
 */
record IsoDate(Map<Unit, Integer> values, String fraction, String zone) {
  private static final Pattern GIVEN =
      Pattern.compile(
          "(?:(?<year>[0-9]{4})(?:-?(?<month>[0-9]{2})(?:-?(?<day>[0-9]{2}))?)?"
              + "|--(?<m>[0-9]{2})(?:-?(?<d>[0-9]{2}))?|---(?<dd>[0-9]{2}))?"
              + "(?:(?:^|[Tt ])(?<hour>[0-9]{2})(?::?(?<minute>[0-9]{2})"
              + "(?::?(?<second>[0-9]{2})(?:[.,](?<fraction>[0-9]{1,9}))?)?)?"
              + "(?<zone>Z|[+-][0-9]{2}(?::?[0-9]{2})?)?)?");

  private static final Pattern TIME_ONLY =
      Pattern.compile(
          "[Tt]?(?<hour>[0-9]{2})(?::?(?<minute>[0-9]{2})"
              + "(?::?(?<second>[0-9]{2})(?:[.,](?<fraction>[0-9]{1,9}))?)?)?(?<zone>)");

  /** Reads a date, or a time of day where only that is wanted; empty if it is neither. */
  static Optional<IsoDate> of(String given, boolean timeOnly) {
    var matcher = GIVEN.matcher(given);
    boolean legal = !given.isEmpty() && matcher.matches();
    if (timeOnly && (!legal || matcher.group("hour") == null)) {
      matcher = TIME_ONLY.matcher(given);
      legal = matcher.matches();
    }
    return legal
        ? Optional.of(
            new IsoDate(
                values(matcher),
                orEmpty(matcher.group("fraction")),
                orEmpty(matcher.group("zone"))))
        : Optional.empty();
  }

  private static String orEmpty(String text) {
    return text == null ? "" : text;
  }

  private static Map<Unit, Integer> values(Matcher matcher) {
    var values = new EnumMap<Unit, Integer>(Unit.class);
    if (matcher.pattern() == GIVEN) {
      put(values, Unit.YEAR, matcher.group("year"));
      put(values, Unit.MONTH, matcher.group("month"));
      put(values, Unit.MONTH, matcher.group("m"));
      put(values, Unit.DAY, matcher.group("day"));
      put(values, Unit.DAY, matcher.group("d"));
      put(values, Unit.DAY, matcher.group("dd"));
    }
    put(values, Unit.HOUR, matcher.group("hour"));
    put(values, Unit.MINUTE, matcher.group("minute"));
    put(values, Unit.SECOND, matcher.group("second"));
    if (matcher.group("second") != null) {
      values.put(Unit.FRACTION, 0);
    }
    return values;
  }

  private static void put(Map<Unit, Integer> values, Unit unit, String digits) {
    if (digits != null) {
      values.put(unit, Integer.valueOf(digits));
    }
  }

  /**
   * The same with the day of the year, where year and day are known.
   *
   * @throws java.time.DateTimeException if there is no such date or time
   */
  IsoDate inCalendar() {
    // 2000 is a leap year: without a year, 29 February is a day.
    int year = values.getOrDefault(Unit.YEAR, 2000);
    int month = values.getOrDefault(Unit.MONTH, 1);
    var date = LocalDate.of(year, month, values.getOrDefault(Unit.DAY, 1));
    LocalTime.of(
        values.getOrDefault(Unit.HOUR, 0),
        values.getOrDefault(Unit.MINUTE, 0),
        values.getOrDefault(Unit.SECOND, 0));
    var more = new EnumMap<Unit, Integer>(Unit.class);
    more.putAll(values);
    if (values.containsKey(Unit.DAY) && values.containsKey(Unit.YEAR)) {
      more.put(Unit.DAY_OF_YEAR, date.getDayOfYear());
    }
    return new IsoDate(more, fraction, zone);
  }

  /** The fraction in so many digits. */
  String fraction(int digits) {
    return (fraction + "0".repeat(digits)).substring(0, digits);
  }

  /** The units that there are, as ISO 8601 writes them. */
  static String text(Map<Unit, Integer> values, String fraction) {
    var iso = new StringBuilder();
    if (values.containsKey(Unit.YEAR)) {
      iso.append(NumberShape.padded(values.get(Unit.YEAR), 4));
    } else if (values.containsKey(Unit.MONTH) || values.containsKey(Unit.DAY)) {
      iso.append('-');
    }
    if (values.containsKey(Unit.MONTH)) {
      iso.append('-').append(NumberShape.padded(values.get(Unit.MONTH), 2));
    } else if (values.containsKey(Unit.DAY)) {
      iso.append('-');
    }
    if (values.containsKey(Unit.DAY)) {
      iso.append('-').append(NumberShape.padded(values.get(Unit.DAY), 2));
    }
    if (values.containsKey(Unit.HOUR)) {
      iso.append(iso.isEmpty() ? "" : "T").append(NumberShape.padded(values.get(Unit.HOUR), 2));
    }
    if (values.containsKey(Unit.MINUTE)) {
      iso.append(':').append(NumberShape.padded(values.get(Unit.MINUTE), 2));
    }
    if (values.containsKey(Unit.SECOND)) {
      iso.append(':').append(NumberShape.padded(values.get(Unit.SECOND), 2));
    }
    return fraction.isEmpty() ? iso.toString() : iso.append('.').append(fraction).toString();
  }
}
