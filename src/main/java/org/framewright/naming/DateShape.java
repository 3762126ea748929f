package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.State;
import dk.brics.automaton.Transition;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Month;
import java.time.Year;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A date, a time of day or both, by the pattern letters of Unicode UTS #35. The field's value is
 * ISO 8601 as far as the shape shows it: {@code 2026-11-25}, {@code 2026-11}, {@code --11-25},
 * {@code 2026-11-25T14:05:09.25}, {@code 14:05}.
 */
final class DateShape implements Shape {
  /** What a part of the pattern shows, the most significant first. */
  enum Unit {
    YEAR("year", 0),
    MONTH("month", 1),
    DAY("day", 2),
    DAY_OF_YEAR("day of the year", 2),
    HOUR("hour", 3),
    MINUTE("minute", 4),
    SECOND("second", 5),
    FRACTION("fraction of a second", 6);

    final String word;

    /** 0 for the unit that tells the most. */
    final int rank;

    Unit(String word, int rank) {
      this.word = word;
      this.rank = rank;
    }
  }

  /** One run of letters or of literal text ({@code unit} null); its texts by value, in order. */
  record Part(Unit unit, int letters, String literal, TreeMap<Integer, String> texts) {
    boolean isFixedWidth() {
      return texts.values().stream().mapToInt(String::length).distinct().count() == 1;
    }
  }

  /** A pattern that cannot be used: what is wrong at which character, and its remedy. */
  static final class BadPattern extends Exception {
    private static final long serialVersionUID = 1L;

    final int at;
    final String remedy;

    BadPattern(int at, String what, String remedy) {
      super(what);
      this.at = at;
      this.remedy = remedy;
    }
  }

  static final String LETTERS =
      "Letters: uuuu or uu (year), MM, M, MMM or MMMM (month), dd or d (day), DDD (day of the year),"
          + " HH, mm, ss, S to SSSSSSSSS (fraction); other text goes between quotes, as in 'T'.";

  /** The range of years where the convention gives none. */
  static final int FIRST_YEAR = 1900;

  static final int LAST_YEAR = 2199;

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

  private final String pattern;
  private final List<Part> parts;
  private final EnumMap<Unit, Part> byUnit = new EnumMap<>(Unit.class);
  private final int firstYear;
  private final int lastYear;
  private final Dfa texts;
  private final Pattern reader;
  private Loss loss;

  private DateShape(String pattern, List<Part> parts, int firstYear, int lastYear) {
    this.pattern = pattern;
    this.parts = parts;
    this.firstYear = firstYear;
    this.lastYear = lastYear;
    parts.stream().filter(part -> part.unit != null).forEach(part -> byUnit.put(part.unit, part));
    this.texts = Dfa.of(automaton());
    this.reader =
        Pattern.compile(
            parts.stream()
                .map(
                    part ->
                        part.unit == null
                            ? Pattern.quote(part.literal)
                            : part.unit != Unit.MONTH || part.letters < 3
                                ? digits(part)
                                : "(\\p{L}+)")
                .collect(Collectors.joining()));
  }

  private static String digits(Part part) {
    return part.isFixedWidth() ? "([0-9]{" + part.letters + "})" : "([0-9]+)";
  }

  /**
   * @throws BadPattern if a letter is not among {@link #LETTERS}, a unit shows twice or lacks the
   *     one above it, or an unpadded number is followed by a digit
   */
  static DateShape of(String pattern, int firstYear, int lastYear) throws BadPattern {
    var parts = parts(pattern, firstYear, lastYear);
    var units = new EnumMap<Unit, Part>(Unit.class);
    for (int i = 0; i < parts.size(); i++) {
      var part = parts.get(i);
      if (part.unit == null) {
        continue;
      }
      if (units.put(part.unit, part) != null) {
        throw new BadPattern(0, "the " + part.unit.word + " shows twice", "Show it once.");
      }
      boolean digitsFollow =
          i + 1 < parts.size()
              && (parts.get(i + 1).unit == null
                  ? Character.isDigit(parts.get(i + 1).literal.charAt(0))
                  : parts.get(i + 1).unit != Unit.MONTH || parts.get(i + 1).letters < 3);
      if (!part.isFixedWidth() && part.letters < 3 && digitsFollow) {
        throw new BadPattern(
            0,
            "an unpadded " + part.unit.word + " runs into the digits after it",
            "Double its letter, so that it always has two digits.");
      }
    }
    if (units.isEmpty()) {
      throw new BadPattern(0, "it shows no part of a date or time", LETTERS);
    }
    needs(units, Unit.DAY_OF_YEAR, Unit.YEAR);
    if (units.containsKey(Unit.YEAR)) {
      needs(units, Unit.DAY, Unit.MONTH);
    }
    if (units.containsKey(Unit.DAY_OF_YEAR)
        && (units.containsKey(Unit.MONTH) || units.containsKey(Unit.DAY))) {
      throw new BadPattern(
          0, "it shows the day twice, in the year and in the month", "Leave one out.");
    }
    needs(units, Unit.MINUTE, Unit.HOUR);
    needs(units, Unit.SECOND, Unit.MINUTE);
    needs(units, Unit.FRACTION, Unit.SECOND);
    return new DateShape(pattern, List.copyOf(parts), firstYear, lastYear);
  }

  private static void needs(Map<Unit, Part> units, Unit unit, Unit above) throws BadPattern {
    if (units.containsKey(unit) && !units.containsKey(above)) {
      throw new BadPattern(
          0,
          "it shows the " + unit.word + " without the " + above.word,
          "Show the " + above.word + " too.");
    }
  }

  private static List<Part> parts(String pattern, int firstYear, int lastYear) throws BadPattern {
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
        throw new BadPattern(i, "“" + c + "” has no meaning in a date", "Leave it out.");
      } else {
        literal.append(c);
        i++;
      }
    }
    flush(literal, parts);
    return parts;
  }

  /** Takes quoted text; two quotes are one quote, inside it and alone. Returns where it ends. */
  private static int quoted(String pattern, int start, StringBuilder literal) throws BadPattern {
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
    throw new BadPattern(start, "a quote is not closed", "Close it with another '.");
  }

  private static void flush(StringBuilder literal, List<Part> parts) {
    if (!literal.isEmpty()) {
      parts.add(new Part(null, 0, literal.toString(), new TreeMap<>()));
      literal.setLength(0);
    }
  }

  private static Part part(int at, char letter, int count, int firstYear, int lastYear)
      throws BadPattern {
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
      throw new BadPattern(
          at, "“" + String.valueOf(letter).repeat(count) + "” is not a date letter here", LETTERS);
    }
    var texts = new TreeMap<Integer, String>();
    switch (unit) {
      case YEAR -> {
        if (count == 2 && lastYear - firstYear > 99) {
          throw new BadPattern(
              at,
              "two digits tell only a hundred years apart",
              "Give years: 2000-2099, or write uuuu.");
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

  /** What of the parts read so far decides whether a later part is possible. */
  private record Memory(int days, int monthLength, int leap) {
    static final Memory NOTHING = new Memory(0, 0, -1);

    /** The memory after a value; null if there is no such date. */
    Memory with(Unit unit, int value, boolean yearShows, boolean monthShows) {
      var next =
          switch (unit) {
            case YEAR -> new Memory(days, monthLength, Year.isLeap(value) ? 1 : 0);
            case MONTH -> new Memory(days, value == 2 ? 28 : Month.of(value).minLength(), leap);
            case DAY -> new Memory(Math.max(28, value), monthLength, leap);
            case DAY_OF_YEAR -> new Memory(value == 366 ? 366 : 365, monthLength, leap);
            case HOUR, MINUTE, SECOND, FRACTION -> this;
          };
      return next.isPossible(yearShows, monthShows) ? next : null;
    }

    private boolean isPossible(boolean yearShows, boolean monthShows) {
      if (days > 31) {
        return days == 365 || leap != 0;
      }
      if (days == 0 || !monthShows || monthLength == 0) {
        return true;
      }
      if (monthLength > 28) {
        return days <= monthLength;
      }
      return days <= 28 || (days == 29 && (!yearShows || leap != 0));
    }
  }

  private Automaton automaton() {
    var states = new LinkedHashMap<Memory, State>();
    var start = new State();
    states.put(Memory.NOTHING, start);
    boolean yearShows = byUnit.containsKey(Unit.YEAR);
    boolean monthShows = byUnit.containsKey(Unit.MONTH);
    for (var part : parts) {
      var after = new LinkedHashMap<Memory, State>();
      states.forEach(
          (memory, state) -> {
            if (part.unit == null) {
              append(state, part.literal, after.computeIfAbsent(memory, m -> new State()));
            } else if (part.unit == Unit.FRACTION) {
              var end = after.computeIfAbsent(memory, m -> new State());
              var here = state;
              for (int i = 1; i < part.letters; i++) {
                var next = new State();
                here.addTransition(new Transition('0', '9', next));
                here = next;
              }
              here.addTransition(new Transition('0', '9', end));
            } else {
              part.texts.forEach(
                  (value, text) -> {
                    var next = memory.with(part.unit, value, yearShows, monthShows);
                    if (next != null) {
                      append(state, text, after.computeIfAbsent(next, m -> new State()));
                    }
                  });
            }
          });
      states = after;
    }
    states.values().forEach(state -> state.setAccept(true));
    var automaton = new Automaton();
    automaton.setInitialState(start);
    automaton.setDeterministic(false);
    return automaton;
  }

  private static void append(State from, String text, State to) {
    var here = from;
    for (int i = 0; i < text.length() - 1; i++) {
      var next = new State();
      here.addTransition(new Transition(text.charAt(i), next));
      here = next;
    }
    here.addTransition(new Transition(text.charAt(text.length() - 1), to));
  }

  List<Part> parts() {
    return parts;
  }

  String pattern() {
    return pattern;
  }

  /** Tells what the main shape shows and this one does not. */
  void compareWith(DateShape main) {
    for (var unit : main.byUnit.keySet()) {
      boolean shown =
          byUnit.containsKey(unit)
              || (unit == Unit.DAY_OF_YEAR && byUnit.containsKey(Unit.DAY))
              || ((unit == Unit.DAY || unit == Unit.MONTH) && byUnit.containsKey(Unit.DAY_OF_YEAR));
      if (!shown
          || (unit == Unit.FRACTION && byUnit.get(unit).letters < main.byUnit.get(unit).letters)) {
        loss = lossOf(main, unit);
        return;
      }
    }
  }

  private static Loss lossOf(DateShape main, Unit unit) {
    Map<Unit, Integer> first = new EnumMap<>(Unit.class);
    main.byUnit.forEach((u, part) -> first.put(u, part.texts.firstKey()));
    if (first.containsKey(Unit.DAY_OF_YEAR)) {
      first.put(Unit.MONTH, 1);
      first.put(Unit.DAY, 1);
    }
    Map<Unit, Integer> second = new EnumMap<>(first);
    var zeros = "0".repeat(main.fractionDigits());
    if (unit == Unit.FRACTION) {
      return new Loss(iso(first, zeros), iso(second, zeros.substring(1) + "1"));
    }
    second.merge(unit == Unit.DAY_OF_YEAR ? Unit.DAY : unit, 1, Integer::sum);
    return new Loss(iso(first, zeros), iso(second, zeros));
  }

  private int fractionDigits() {
    var fraction = byUnit.get(Unit.FRACTION);
    return fraction == null ? 0 : fraction.letters;
  }

  @Override
  public Dfa texts() {
    return texts;
  }

  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    var given = raw.strip();
    boolean timeOnly = byUnit.keySet().iterator().next().compareTo(Unit.HOUR) >= 0;
    var matcher = GIVEN.matcher(given);
    boolean legal = !given.isEmpty() && matcher.matches();
    if (timeOnly && (!legal || matcher.group("hour") == null)) {
      matcher = TIME_ONLY.matcher(given);
      legal = matcher.matches();
    }
    if (!legal) {
      return new Settled.Refused("“" + raw + "” is not " + wanted(), give());
    }
    var values = given(matcher);
    try {
      valid(values);
    } catch (DateTimeException e) {
      return new Settled.Refused("there is no such date or time as “" + raw + "”", give());
    }
    for (var unit : byUnit.keySet()) {
      if (!values.containsKey(unit)) {
        return new Settled.Refused("“" + raw + "” lacks the " + unit.word, give());
      }
    }
    var year = byUnit.containsKey(Unit.YEAR) ? values.get(Unit.YEAR) : firstYear;
    if (year < firstYear || year > lastYear) {
      return new Settled.Refused(
          "the year " + year + " is not between " + firstYear + " and " + lastYear,
          "Correct the year, or give the field years: in the convention.");
    }
    if (matcher.group("zone") != null && !matcher.group("zone").isEmpty()) {
      var zone = matcher.group("zone");
      var local = given.substring(0, given.length() - zone.length());
      steps.add(new Step(field, raw, local, "the time as told, without its zone"));
    }
    var fraction = matcher.group("fraction");
    var text = new StringBuilder();
    for (var part : parts) {
      text.append(
          part.unit == null
              ? part.literal
              : part.unit == Unit.FRACTION
                  ? fraction(fraction, part.letters)
                  : part.texts.get(values.get(part.unit)));
    }
    return new Settled.Text(text.toString(), value(text.toString()));
  }

  private static Map<Unit, Integer> given(Matcher matcher) {
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

  /** Refuses what is not in the calendar; knows the day of the year afterwards. */
  private static void valid(Map<Unit, Integer> values) {
    // 2000 is a leap year: without a year, 29 February is a day.
    int year = values.getOrDefault(Unit.YEAR, 2000);
    int month = values.getOrDefault(Unit.MONTH, 1);
    var date = LocalDate.of(year, month, values.getOrDefault(Unit.DAY, 1));
    if (values.containsKey(Unit.DAY) && values.containsKey(Unit.YEAR)) {
      values.put(Unit.DAY_OF_YEAR, date.getDayOfYear());
    }
    LocalTime.of(
        values.getOrDefault(Unit.HOUR, 0),
        values.getOrDefault(Unit.MINUTE, 0),
        values.getOrDefault(Unit.SECOND, 0));
  }

  private static String fraction(String digits, int width) {
    var padded = (digits == null ? "" : digits) + "0".repeat(width);
    return padded.substring(0, width);
  }

  private String wanted() {
    boolean date = byUnit.keySet().stream().anyMatch(unit -> unit.compareTo(Unit.HOUR) < 0);
    boolean time = byUnit.containsKey(Unit.HOUR);
    return date && time ? "a date with a time of day" : date ? "a date" : "a time of day";
  }

  private String give() {
    boolean date = byUnit.keySet().stream().anyMatch(unit -> unit.compareTo(Unit.HOUR) < 0);
    boolean time = byUnit.containsKey(Unit.HOUR);
    return "Give it as ISO 8601 writes it, such as "
        + (date && time ? "2026-11-25T14:05:09" : date ? "2026-11-25" : "14:05:09")
        + ".";
  }

  @Override
  public String value(String text) {
    var matcher = reader.matcher(text);
    if (!matcher.matches()) {
      throw new IllegalArgumentException(text + " is not shaped " + pattern);
    }
    var values = new EnumMap<Unit, Integer>(Unit.class);
    var fraction = "";
    int group = 0;
    for (var part : parts) {
      if (part.unit == null) {
        continue;
      }
      var shown = matcher.group(++group);
      switch (part.unit) {
        case FRACTION -> fraction = shown;
        case YEAR -> {
          int year = Integer.parseInt(shown);
          if (part.letters == 2) {
            year += firstYear - firstYear % 100;
            year += year < firstYear ? 100 : 0;
          }
          values.put(Unit.YEAR, year);
        }
        case MONTH -> values.put(Unit.MONTH, month(part, shown));
        case DAY, DAY_OF_YEAR, HOUR, MINUTE, SECOND ->
            values.put(part.unit, Integer.valueOf(shown));
      }
    }
    if (values.containsKey(Unit.DAY_OF_YEAR)) {
      var date = LocalDate.ofYearDay(values.get(Unit.YEAR), values.get(Unit.DAY_OF_YEAR));
      values.put(Unit.MONTH, date.getMonthValue());
      values.put(Unit.DAY, date.getDayOfMonth());
    }
    return iso(values, fraction);
  }

  private static int month(Part part, String shown) {
    return part.letters < 3
        ? Integer.parseInt(shown)
        : part.texts.entrySet().stream()
            .filter(entry -> entry.getValue().equals(shown))
            .findFirst()
            .orElseThrow()
            .getKey();
  }

  private static String iso(Map<Unit, Integer> values, String fraction) {
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

  @Override
  public Optional<Loss> loss() {
    return Optional.ofNullable(loss);
  }

  @Override
  public String inWords() {
    return "a date as " + pattern;
  }
}
