package org.framewright.naming;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Text;

/** Reads the shapes of one field: the main one from its own keys, others below {@code shapes:}. */
final class ShapeDeclarations {
  private static final Values.Range SHORT_YEARS = new Values.Range(2000, 2099);
  private static final int MOST_YEARS = 1_000;

  private final Faults faults;
  private final Values values;
  private final FieldType type;
  private final SequencedMap<String, Item> keys;
  private final SequencedMap<String, String> choices;
  private final SequencedMap<String, Shape> shapes = new LinkedHashMap<>();

  ShapeDeclarations(
      Faults faults,
      Values values,
      FieldType type,
      SequencedMap<String, Item> keys,
      SequencedMap<String, String> choices) {
    this.faults = faults;
    this.values = values;
    this.type = type;
    this.keys = keys;
    this.choices = choices;
  }

  /** The shapes by name, the main one's empty; none where that one is not understood. */
  SequencedMap<String, Shape> read(Item declaration) {
    shape(declaration, keys, null)
        .ifPresent(
            main -> {
              shapes.put("", main);
              if (keys.containsKey("shapes")) {
                values
                    .named(keys.get("shapes"), Limits.SHAPES, Text.of("shapes"))
                    .forEach((name, item) -> other(name, item, main));
              }
            });
    return shapes;
  }

  private void other(String name, Item item, Shape main) {
    if (!FieldDeclarations.isName(name)) {
      faults.add(
          item.place(),
          Text.of("a shape's name is made of A-Z, a-z, 0-9 and _"),
          Text.of("Rename it."));
      return;
    }
    var own = new LinkedHashMap<>(keys);
    switch (type) {
      case CHOICE -> {
        texts(item).ifPresent(shape -> shapes.put(name, shape));
        return;
      }
      case DATE -> {
        if (item.node() instanceof YamlNode.Text) {
          own.put("pattern", item);
        } else {
          own.putAll(values.map(item, Language.shapeKeys(type)));
        }
      }
      case CODE, WORDS, PERSON -> own.putAll(values.map(item, Language.shapeKeys(type)));
      case NUMBER, COUNTER -> own.putAll(values.map(item, Language.shapeKeys(type)));
      case GTIN, FIXED -> {
        faults.add(
            item.place(),
            Text.of("a {0} field has one shape", type.word()),
            Text.of("Leave it out."));
        return;
      }
    }
    shape(item, own, main).ifPresent(shape -> shapes.put(name, shape));
  }

  /** A choice's other texts; each of its values has one. */
  private Optional<Shape> texts(Item item) {
    var shown = new LinkedHashMap<String, String>();
    values
        .map(item, choices.keySet())
        .forEach((value, text) -> shown.put(value, values.text(text)));
    for (var value : choices.keySet()) {
      if (shown.getOrDefault(value, "").isEmpty()) {
        faults.add(
            item.place(),
            Text.of("it has no text for “{0}”", Quoted.bare(value)),
            Text.of("Give every value a text."));
        return Optional.empty();
      }
    }
    return choices.isEmpty() || !shown.keySet().equals(choices.keySet())
        ? Optional.empty()
        : choice(item, shown);
  }

  private Optional<Shape> choice(Item item, SequencedMap<String, String> shown) {
    if (shown.values().stream().mapToInt(String::length).sum() > Limits.CHOICE_TEXTS) {
      faults.add(
          item.place(),
          Text.of("its texts are longer than {0} characters in all", Limits.CHOICE_TEXTS),
          Text.of("Make it a code, or give it fewer or shorter texts."));
      return Optional.empty();
    }
    return Optional.of(new ChoiceShape(choices, shown));
  }

  private Optional<Shape> shape(Item item, Map<String, Item> own, Shape main) {
    int before = faults.count();
    Optional<Shape> shape =
        switch (type) {
          case DATE -> date(item, own, (DateShape) main);
          case CODE, WORDS, PERSON -> words(item, own, (TextShape) main);
          case NUMBER, COUNTER -> number(own, (NumberShape) main);
          case CHOICE -> {
            var shown = new LinkedHashMap<String, String>();
            choices.keySet().forEach(value -> shown.put(value, value));
            yield shown.isEmpty() ? Optional.empty() : choice(item, shown);
          }
          case GTIN -> gtin(own);
          case FIXED -> fixed(item, own);
        };
    return faults.count() > before ? Optional.empty() : shape;
  }

  private Optional<Shape> fixed(Item item, Map<String, Item> own) {
    var text = values.text(own, "text", "");
    if (text.isEmpty()) {
      faults.missing(item, "text", "text: STUDIO");
      return Optional.empty();
    }
    return Optional.of(new FixedShape(text));
  }

  private Optional<Shape> date(Item item, Map<String, Item> own, DateShape main) {
    if (!own.containsKey("pattern")) {
      faults.missing(item, "pattern", "pattern: uuuu-MM-dd");
      return Optional.empty();
    }
    int before = faults.count();
    var pattern = values.text(own.get("pattern"), Limits.DATE_PATTERN);
    if (faults.count() > before) {
      return Optional.empty();
    }
    var years =
        values.range(
            own,
            "years",
            DatePattern.hasShortYear(pattern)
                ? SHORT_YEARS
                : new Values.Range(DatePattern.FIRST_YEAR, DatePattern.LAST_YEAR),
            1,
            9999);
    if (years.last() - years.first() >= MOST_YEARS) {
      faults.add(
          own.get("years").place(),
          Text.of("a thousand years are enough"),
          Text.of("Give {0}.", "years: 1900-2199"));
      return Optional.empty();
    }
    try {
      var shape = new DateShape(DatePattern.of(pattern, years.first(), years.last()));
      return Optional.of(main == null ? shape : shape.comparedWith(main));
    } catch (DatePattern.Bad e) {
      faults.add(own.get("pattern").placeOf(e.at), e.what, e.remedy);
      return Optional.empty();
    }
  }

  private Optional<Shape> words(Item item, Map<String, Item> own, TextShape main) {
    boolean code = type == FieldType.CODE;
    var letters =
        values.word(
            own,
            "letters",
            Alphabet.Letters.class,
            code ? Alphabet.Letters.UPPER : Alphabet.Letters.LOWER);
    var also = own.containsKey("also") ? values.text(own.get("also"), Limits.ALSO) : "";
    var alphabet =
        new Alphabet(
            letters, values.yes(own, "digits", true), values.yes(own, "accents", false), also);
    if (also.chars().anyMatch(c -> !mayBeAlso((char) c))) {
      faults.add(
          own.get("also").place(),
          Text.of(
              "spaces, marks, invisible characters, / and characters beyond U+FFFF cannot be in a"
                  + " field"),
          Text.of("Leave them out."));
    }
    var separator = code ? "" : values.text(own, "separator", "-");
    if (!code
        && (separator.length() != 1
            || alphabet.has(separator.charAt(0))
            || "/[]{}".contains(separator))) {
      faults.add(
          own.getOrDefault("separator", item).place(),
          Text.of("a separator is one character that is not in the words themselves"),
          Text.of("Write {0}.", "separator: \"-\""));
      return Optional.empty();
    }
    var length = values.range(own, "length", new Values.Range(1, code ? 12 : 32), 1, Limits.TEXT);
    var order = values.word(own, "order", TextShape.Order.class, TextShape.Order.AS_GIVEN);
    return Optional.of(
        new TextShape(
            new TextShape.Form(alphabet, separator, length.first(), length.last(), order), main));
  }

  /**
   * Whether a field may have this character besides letters and digits: it stands alone, and stays
   * as it is under normalisation form C.
   */
  static boolean mayBeAlso(char c) {
    return c > ' '
        && c != '/'
        && !Character.isISOControl(c)
        && !Character.isSurrogate(c)
        && !Character.isWhitespace(c)
        && Character.isDefined(c)
        && Character.getType(c) != Character.FORMAT
        && !Values.isMark(c)
        && Values.composed(String.valueOf(c)).equals(String.valueOf(c));
  }

  private Optional<Shape> number(Map<String, Item> own, NumberShape main) {
    boolean counter = type == FieldType.COUNTER;
    var digits =
        values.range(
            own,
            "digits",
            counter ? new Values.Range(4, 4) : new Values.Range(1, NumberShape.MOST_DIGITS),
            1,
            NumberShape.MOST_DIGITS);
    int room = (int) NumberShape.room(digits.last());
    int smallest =
        counter ? values.number(own, "start", 1, 0, room) : values.number(own, "from", 0, 0, room);
    int largest = counter ? room : values.number(own, "to", room, smallest, room);
    return Optional.of(
        new NumberShape(
            digits.first(),
            digits.last(),
            main == null ? digits.first() : main.width(),
            smallest,
            largest));
  }

  private Optional<Shape> gtin(Map<String, Item> own) {
    int digits = values.number(own, "digits", 14, 8, 14);
    if (digits == 8 || digits >= 12) {
      return Optional.of(new GtinShape(digits));
    }
    faults.add(
        own.get("digits").place(),
        Text.of("a product number has 8, 12, 13 or 14 digits"),
        Text.of("Write {0}, which holds them all.", "digits: 14"));
    return Optional.empty();
  }
}
