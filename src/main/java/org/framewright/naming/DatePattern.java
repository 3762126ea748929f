package org.framewright.naming;

import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.framewright.base.Text;

/**
 * A pattern of a date or time of day, by the letters of Unicode UTS #35.
 *
 * @param text the pattern as written
 * @param parts its letters and literal text in order
 * @param byUnit the parts that show a unit; iterates from the most significant
 */
record DatePattern(
    String text, List<Part> parts, Map<Unit, Part> byUnit, int firstYear, int lastYear) {
  /** What a part of the pattern shows, the most significant first. */
  enum Unit {
    YEAR(0),
    MONTH(1),
    DAY(2),
    DAY_OF_YEAR(2),
    HOUR(3),
    MINUTE(4),
    SECOND(5),
    FRACTION(6);

    /** 0 for the most significant unit. */
    final int rank;

    Unit(int rank) {
      this.rank = rank;
    }

    Text word() {
      return switch (this) {
        case YEAR -> Text.of("year");
        case MONTH -> Text.of("month");
        case DAY -> Text.of("day");
        case DAY_OF_YEAR -> Text.of("day of the year");
        case HOUR -> Text.of("hour");
        case MINUTE -> Text.of("minute");
        case SECOND -> Text.of("second");
        case FRACTION -> Text.of("fraction of a second");
      };
    }
  }

  /** One run of letters or of literal text ({@code unit} null); its texts by value, in order. */
  record Part(Unit unit, int letters, String literal, TreeMap<Integer, String> texts) {
    boolean isFixedWidth() {
      return texts.values().stream().mapToInt(String::length).distinct().count() == 1;
    }
  }

  /** A pattern that cannot be used: what is wrong at which character, and its remedy. */
  static final class Bad extends Exception {
    private static final long serialVersionUID = 1L;

    final int at;
    final transient Text what;
    final transient Text remedy;

    Bad(int at, Text what, Text remedy) {
      super(what.english());
      this.what = what;
      this.at = at;
      this.remedy = remedy;
    }
  }

  static final Text LETTERS =
      Text.of(
          "Letters: uuuu or uu (year), MM, M, MMM or MMMM (month), dd or d (day), DDD (day of the"
              + " year), HH, mm, ss, S to SSSSSSSSS (fraction); other text goes between quotes, as"
              + " in {0}.",
          "'T'");

  /** The range of years where the convention gives none. */
  static final int FIRST_YEAR = 1900;

  static final int LAST_YEAR = 2199;

  /** Whether a pattern shows the year in two digits, as far as it can be read. */
  static boolean hasShortYear(String pattern) {
    for (int i = 0; i < pattern.length(); ) {
      int end = i + 1;
      while (end < pattern.length() && isYear(pattern.charAt(i)) && isYear(pattern.charAt(end))) {
        end++;
      }
      if (isYear(pattern.charAt(i)) && end - i == 2) {
        return true;
      }
      i = end;
    }
    return false;
  }

  private static boolean isYear(char c) {
    return c == 'u' || c == 'y';
  }

  /**
   * @throws Bad if a letter is not among {@link #LETTERS}, a unit shows twice or lacks the one
   *     above it, or an unpadded number is followed by a digit
   */
  static DatePattern of(String pattern, int firstYear, int lastYear) throws Bad {
    var parts = parts(pattern, firstYear, lastYear);
    var units = new EnumMap<Unit, Part>(Unit.class);
    for (int i = 0; i < parts.size(); i++) {
      var part = parts.get(i);
      if (part.unit == null) {
        continue;
      }
      if (units.put(part.unit, part) != null) {
        throw new Bad(
            0, Text.of("the {0} shows twice", part.unit.word()), Text.of("Show it once."));
      }
      boolean digitsFollow =
          i + 1 < parts.size()
              && (parts.get(i + 1).unit == null
                  ? Character.isDigit(parts.get(i + 1).literal.charAt(0))
                  : parts.get(i + 1).unit != Unit.MONTH || parts.get(i + 1).letters < 3);
      if (!part.isFixedWidth() && part.letters < 3 && digitsFollow) {
        throw new Bad(
            0,
            Text.of("an unpadded {0} runs into the digits after it", part.unit.word()),
            Text.of("Double its letter, so that it always has two digits."));
      }
    }
    if (units.isEmpty()) {
      throw new Bad(0, Text.of("it shows no part of a date or time"), LETTERS);
    }
    needs(units, Unit.DAY_OF_YEAR, Unit.YEAR);
    if (units.containsKey(Unit.YEAR)) {
      needs(units, Unit.DAY, Unit.MONTH);
    }
    if (units.containsKey(Unit.DAY_OF_YEAR)
        && (units.containsKey(Unit.MONTH) || units.containsKey(Unit.DAY))) {
      throw new Bad(
          0,
          Text.of("it shows the day twice, in the year and in the month"),
          Text.of("Leave one out."));
    }
    needs(units, Unit.MINUTE, Unit.HOUR);
    needs(units, Unit.SECOND, Unit.MINUTE);
    needs(units, Unit.FRACTION, Unit.SECOND);
    return new DatePattern(
        pattern, List.copyOf(parts), Collections.unmodifiableMap(units), firstYear, lastYear);
  }

  private static void needs(Map<Unit, Part> units, Unit unit, Unit above) throws Bad {
    if (units.containsKey(unit) && !units.containsKey(above)) {
      throw new Bad(
          0,
          Text.of("it shows the {0} without the {1}", unit.word(), above.word()),
          Text.of("Show the {0} too.", above.word()));
    }
  }

  private static List<Part> parts(String pattern, int firstYear, int lastYear) throws Bad {
    var parts = new ArrayList<Part>();
    var literal = new StringBuilder();
    for (int i = 0; i < pattern.length(); ) {
      char c = pattern.charAt(i);
      if (c == '\'') {
        i = quoted(pattern, i, literal);
      } else if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) {
        int end = i;
        while (end < pattern.length() && pattern.charAt(end) == c) {
          end++;
        }
        flush(literal, parts);
        parts.add(part(i, c, end - i, firstYear, lastYear));
        i = end;
      } else if (c == '[' || c == ']' || c == '{' || c == '}' || c == '#') {
        throw new Bad(i, Text.of("“{0}” has no meaning in a date", c), Text.of("Leave it out."));
      } else {
        literal.append(c);
        i++;
      }
    }
    flush(literal, parts);
    return parts;
  }

  /** Takes quoted text; two quotes are one quote, inside it and alone. Returns where it ends. */
  private static int quoted(String pattern, int start, StringBuilder literal) throws Bad {
    if (pattern.startsWith("''", start)) {
      literal.append('\'');
      return start + 2;
    }
    for (int i = start + 1; i < pattern.length(); i++) {
      if (pattern.charAt(i) != '\'') {
        literal.append(pattern.charAt(i));
      } else if (pattern.startsWith("''", i)) {
        literal.append('\'');
        i++;
      } else {
        return i + 1;
      }
    }
    throw new Bad(
        start, Text.of("a quote is not closed"), Text.of("Close it with another {0}.", "'"));
  }

  private static void flush(StringBuilder literal, List<Part> parts) {
    if (!literal.isEmpty()) {
      parts.add(new Part(null, 0, literal.toString(), new TreeMap<>()));
      literal.setLength(0);
    }
  }

  private static Part part(int at, char letter, int count, int firstYear, int lastYear) throws Bad {
    var unit =
        switch (letter) {
          case 'u', 'y' -> count == 4 || count == 2 ? Unit.YEAR : null;
          case 'M', 'L' -> count <= 4 ? Unit.MONTH : null;
          case 'd' -> count <= 2 ? Unit.DAY : null;
          case 'D' -> count == 3 ? Unit.DAY_OF_YEAR : null;
          case 'H' -> count <= 2 ? Unit.HOUR : null;
          case 'm' -> count <= 2 ? Unit.MINUTE : null;
          case 's' -> count <= 2 ? Unit.SECOND : null;
          case 'S' -> count <= 9 ? Unit.FRACTION : null;
          default -> null;
        };
    if (unit == null) {
      throw new Bad(
          at,
          Text.of(
              "“{0}” is not a date letter here", Quoted.bare(String.valueOf(letter).repeat(count))),
          switch (letter) {
            case 'Y' -> Text.of("Write the year as {0}.", "u".repeat(count == 2 ? 2 : 4));
            case 'D' -> Text.of("Write the day of the month as dd.");
            case 'h', 'k', 'K' -> Text.of("Write the hour as HH.");
            default -> LETTERS;
          });
    }
    var texts = new TreeMap<Integer, String>();
    switch (unit) {
      case YEAR -> {
        if (count == 2 && lastYear - firstYear > 99) {
          throw new Bad(
              at,
              Text.of("years of two digits have room for a hundred years only"),
              Text.of("Give {0}, or write {1}.", "years: 2000-2099", "uuuu"));
        }
        for (int y = firstYear; y <= lastYear; y++) {
          texts.put(y, NumberShape.padded(count == 2 ? y % 100 : y, count));
        }
      }
      case MONTH -> {
        for (var month : Month.values()) {
          texts.put(
              month.getValue(),
              count < 3
                  ? NumberShape.padded(month.getValue(), count)
                  : month.getDisplayName(
                      count == 3 ? TextStyle.SHORT : TextStyle.FULL, Locale.ENGLISH));
        }
      }
      case DAY -> fill(texts, 1, 31, count);
      case DAY_OF_YEAR -> fill(texts, 1, 366, count);
      case HOUR -> fill(texts, 0, 23, count);
      case MINUTE, SECOND -> fill(texts, 0, 59, count);
      case FRACTION -> {
        // Every string of so many digits; the automaton takes them as a run, not one by one.
        texts.put(0, "0".repeat(count));
      }
    }
    return new Part(unit, count, "", texts);
  }

  private static void fill(Map<Integer, String> texts, int first, int last, int width) {
    for (int i = first; i <= last; i++) {
      texts.put(i, NumberShape.padded(i, width));
    }
  }
}
