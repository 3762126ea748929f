package org.framewright.naming;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.framewright.base.Text;
import org.framewright.naming.DatePattern.Unit;

/**
 * A date, a time of day or both, by the pattern letters of Unicode UTS #35. The field's value is
 * ISO 8601 as far as the shape shows it: {@code 2026-11-25}, {@code 2026-11}, {@code --11-25},
 * {@code 2026-11-25T14:05:09.25}, {@code 14:05}.
 */
final class DateShape implements Shape {
  private final DatePattern pattern;
  private final Dfa texts;
  private final Pattern reader;
  private final Optional<Loss> loss;

  DateShape(DatePattern pattern) {
    this(pattern, DateAutomaton.of(pattern), reader(pattern), Optional.empty());
  }

  private DateShape(DatePattern pattern, Dfa texts, Pattern reader, Optional<Loss> loss) {
    this.pattern = pattern;
    this.texts = texts;
    this.reader = reader;
    this.loss = loss;
  }

  private static Pattern reader(DatePattern pattern) {
    return Pattern.compile(
        pattern.parts().stream()
            .map(
                part ->
                    part.unit() == null
                        ? Pattern.quote(part.literal())
                        : part.unit() != Unit.MONTH || part.letters() < 3
                            ? digits(part)
                            : "(\\p{L}+)")
            .collect(Collectors.joining()));
  }

  private static String digits(DatePattern.Part part) {
    return part.isFixedWidth() ? "([0-9]{" + part.letters() + "})" : "([0-9]+)";
  }

  List<DatePattern.Part> parts() {
    return pattern.parts();
  }

  boolean showsSeconds() {
    return pattern.byUnit().containsKey(Unit.SECOND);
  }

  /** This shape, knowing what the main one shows and it does not. */
  DateShape comparedWith(DateShape main) {
    return new DateShape(pattern, texts, reader, lossAgainst(main));
  }

  private Optional<Loss> lossAgainst(DateShape main) {
    var own = pattern.byUnit();
    for (var unit : main.pattern.byUnit().keySet()) {
      boolean shown =
          own.containsKey(unit)
              || (unit == Unit.DAY_OF_YEAR && own.containsKey(Unit.DAY))
              || ((unit == Unit.DAY || unit == Unit.MONTH) && own.containsKey(Unit.DAY_OF_YEAR));
      if (!shown || (unit == Unit.FRACTION && fractionDigits() < main.fractionDigits())) {
        return Optional.of(lossOf(main, unit));
      }
    }
    return Optional.empty();
  }

  private static Loss lossOf(DateShape main, Unit unit) {
    Map<Unit, Integer> first = new EnumMap<>(Unit.class);
    main.pattern.byUnit().forEach((u, part) -> first.put(u, part.texts().firstKey()));
    if (first.containsKey(Unit.DAY_OF_YEAR)) {
      first.put(Unit.MONTH, 1);
      first.put(Unit.DAY, 1);
    }
    Map<Unit, Integer> second = new EnumMap<>(first);
    var zeros = "0".repeat(main.fractionDigits());
    if (unit == Unit.FRACTION) {
      return new Loss(IsoDate.text(first, zeros), IsoDate.text(second, zeros.substring(1) + "1"));
    }
    second.merge(unit == Unit.DAY_OF_YEAR ? Unit.DAY : unit, 1, Integer::sum);
    return new Loss(IsoDate.text(first, zeros), IsoDate.text(second, zeros));
  }

  private int fractionDigits() {
    var fraction = pattern.byUnit().get(Unit.FRACTION);
    return fraction == null ? 0 : fraction.letters();
  }

  @Override
  public Dfa texts() {
    return texts;
  }

  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    var given = raw.strip();
    var units = pattern.byUnit().keySet();
    boolean timeOnly = units.iterator().next().compareTo(Unit.HOUR) >= 0;
    var read = IsoDate.of(given, timeOnly);
    if (read.isEmpty()) {
      return new Settled.Refused(Text.of("“{0}” is not {1}", Quoted.bare(raw), wanted()), give());
    }
    IsoDate date;
    try {
      date = read.get().inCalendar();
    } catch (DateTimeException e) {
      return new Settled.Refused(
          Text.of("there is no such date or time as “{0}”", Quoted.bare(raw)), give());
    }
    for (var unit : units) {
      if (!date.values().containsKey(unit)) {
        return new Settled.Refused(
            Text.of("“{0}” lacks the {1}", Quoted.bare(raw), unit.word()), give());
      }
    }
    int year = units.contains(Unit.YEAR) ? date.values().get(Unit.YEAR) : pattern.firstYear();
    if (year < pattern.firstYear() || year > pattern.lastYear()) {
      return new Settled.Refused(
          Text.of(
              "the year {0} is not between {1} and {2}",
              Integer.toString(year),
              Integer.toString(pattern.firstYear()),
              Integer.toString(pattern.lastYear())),
          Text.of("Correct the year, or give the field years: in the convention."));
    }
    if (!date.zone().isEmpty()) {
      var local = given.substring(0, given.length() - date.zone().length());
      steps.add(new Step(field, raw, local, Text.of("the local time, without its zone")));
    }
    var text = text(date);
    return new Settled.Legal(text, value(text));
  }

  private String text(IsoDate date) {
    return pattern.parts().stream()
        .map(
            part ->
                part.unit() == null
                    ? part.literal()
                    : part.unit() == Unit.FRACTION
                        ? date.fraction(part.letters())
                        : part.texts().get(date.values().get(part.unit())))
        .collect(Collectors.joining());
  }

  private Text wanted() {
    boolean date =
        pattern.byUnit().keySet().stream().anyMatch(unit -> unit.compareTo(Unit.HOUR) < 0);
    boolean time = pattern.byUnit().containsKey(Unit.HOUR);
    return date && time
        ? Text.of("a date with a time of day")
        : date ? Text.of("a date") : Text.of("a time of day");
  }

  private Text give() {
    boolean date =
        pattern.byUnit().keySet().stream().anyMatch(unit -> unit.compareTo(Unit.HOUR) < 0);
    boolean time = pattern.byUnit().containsKey(Unit.HOUR);
    return Text.of(
        "Give it as ISO 8601 writes it, such as {0}.",
        date && time ? "2026-11-25T14:05:09" : date ? "2026-11-25" : "14:05:09");
  }

  @Override
  public String value(String text) {
    var matcher = reader.matcher(text);
    if (!matcher.matches()) {
      throw new IllegalArgumentException(text + " is not shaped " + pattern.text());
    }
    var values = new EnumMap<Unit, Integer>(Unit.class);
    var fraction = "";
    int group = 0;
    for (var part : pattern.parts()) {
      if (part.unit() == null) {
        continue;
      }
      var shown = matcher.group(++group);
      switch (part.unit()) {
        case FRACTION -> fraction = shown;
        case YEAR -> {
          int year = Integer.parseInt(shown);
          if (part.letters() == 2) {
            year += pattern.firstYear() - pattern.firstYear() % 100;
            year += year < pattern.firstYear() ? 100 : 0;
          }
          values.put(Unit.YEAR, year);
        }
        case MONTH -> values.put(Unit.MONTH, month(part, shown));
        case DAY, DAY_OF_YEAR, HOUR, MINUTE, SECOND ->
            values.put(part.unit(), Integer.valueOf(shown));
      }
    }
    if (values.containsKey(Unit.DAY_OF_YEAR)) {
      var date = LocalDate.ofYearDay(values.get(Unit.YEAR), values.get(Unit.DAY_OF_YEAR));
      values.put(Unit.MONTH, date.getMonthValue());
      values.put(Unit.DAY, date.getDayOfMonth());
    }
    return IsoDate.text(values, fraction);
  }

  private static int month(DatePattern.Part part, String shown) {
    return part.letters() < 3
        ? Integer.parseInt(shown)
        : part.texts().entrySet().stream()
            .filter(entry -> entry.getValue().equals(shown))
            .findFirst()
            .orElseThrow()
            .getKey();
  }

  @Override
  public Optional<Loss> loss() {
    return loss;
  }

  @Override
  public Text inWords() {
    return Text.of("a date as {0}", pattern.text());
  }
}
