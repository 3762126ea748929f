package org.framewright.naming;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The keys of a convention's file: the one source of what the reader knows, of {@code
 * templates/convention.schema.json} and of the tables in {@code docs/conventions.md}.
 */
final class Language {
  /** What a key takes as its value. */
  sealed interface Takes {
    /** One line of text. */
    record Text() implements Takes {}

    /** One character. */
    record OneCharacter() implements Takes {}

    /** A text or a list of texts. */
    record Texts() implements Takes {}

    /** Yes or no. */
    record YesNo() implements Takes {}

    /** A whole number from {@code least} to {@code most}. */
    record WholeNumber(int least, int most) implements Takes {}

    /** A whole number or two with a hyphen between them, both within the bounds. */
    record Range(int least, int most) implements Takes {}

    /** One of some words. */
    record Word(List<String> words) implements Takes {}

    /** One of some numbers. */
    record OneOf(List<Integer> numbers) implements Takes {}

    /** A list of values, or each value with what it means. */
    record Values() implements Takes {}

    /** Names of the author's own, each with what stands below it. */
    record Named(String of) implements Takes {}
  }

  /**
   * A key.
   *
   * @param byDefault its value where it is left out, in words or as it would be written; empty
   *     where it must be given
   */
  record Key(String name, Takes takes, Optional<String> byDefault, String meaning) {
    static Key required(String name, Takes takes, String meaning) {
      return new Key(name, takes, Optional.empty(), meaning);
    }

    static Key optional(String name, Takes takes, String byDefault, String meaning) {
      return new Key(name, takes, Optional.of(byDefault), meaning);
    }
  }

  private static final Takes TEXT = new Takes.Text();
  private static final Takes YES_NO = new Takes.YesNo();

  /** No default; nothing of the kind is there. */
  static final String NONE = "none";

  static final List<Key> TOP =
      List.of(
          Key.required("convention", TEXT, "The title."),
          Key.optional("about", TEXT, NONE, "What it is for."),
          Key.optional("sources", new Takes.Texts(), NONE, "Where its rules come from."),
          Key.required("fields", new Takes.Named("field"), "The typed pieces of names."),
          Key.required(
              "names",
              new Takes.Named("pattern"),
              "The kinds of names, each with its pattern: text, {field}, {field.shape}, {kind} and"
                  + " [optional runs]."),
          Key.required(
              "folders",
              new Takes.Named("folder"),
              "The folders of a job by role; paths with / that may show fields."),
          Key.optional(
              "travels-to",
              new Takes.Texts(),
              "[windows, macos, linux, cloud]",
              "The places that names must be fit for."),
          Key.optional(
              "before",
              new Takes.WholeNumber(0, 200),
              "60",
              "Characters kept free for the path of the folder that jobs lie in."));

  private static final Key TYPE =
      Key.required(
          "type",
          new Takes.Word(Arrays.stream(FieldType.values()).map(FieldType::word).toList()),
          "What kind of value it holds.");

  private static final List<Key> COMMON =
      List.of(
          TYPE,
          Key.optional("label", TEXT, "the field's name", "What forms and lists call it."),
          Key.optional("default", TEXT, NONE, "The value where none is given."),
          Key.optional("required", YES_NO, "no", "Whether it may not stand in an optional run."),
          Key.optional(
              "shapes",
              new Takes.Named("shape"),
              NONE,
              "Other ways to show the same value, written {field.shape}."));

  private static final Key LETTERS_UPPER = letters("upper");
  private static final Key LETTERS_LOWER = letters("lower");
  private static final Key DIGITS_TOO =
      Key.optional("digits", YES_NO, "yes", "Whether it may have digits.");
  private static final Key ACCENTS =
      Key.optional("accents", YES_NO, "no", "Whether it may have Latin letters with accents.");
  private static final Key ALSO =
      Key.optional("also", TEXT, NONE, "More characters that it may have.");
  private static final Key SEPARATOR =
      Key.optional("separator", new Takes.OneCharacter(), "\"-\"", "What joins words.");

  private static Key letters(String byDefault) {
    return Key.optional("letters", words(Alphabet.Letters.class), byDefault, "Which letters.");
  }

  private static Key length(String byDefault) {
    return Key.optional("length", new Takes.Range(1, Limits.TEXT), byDefault, "Characters.");
  }

  private static Key numberOfDigits(String byDefault) {
    return Key.optional(
        "digits",
        new Takes.Range(1, NumberShape.MOST_DIGITS),
        byDefault,
        "How many; zeros fill it up to the first number.");
  }

  private static Takes words(Class<? extends Enum<?>> type) {
    return new Takes.Word(
        Arrays.stream(type.getEnumConstants())
            .map(word -> word.name().toLowerCase(Locale.ROOT).replace('_', '-'))
            .toList());
  }

  private Language() {}

  /** The keys of a field of this type besides those that every field has. */
  static List<Key> own(FieldType type) {
    return switch (type) {
      case DATE ->
          List.of(
              Key.required(
                  "pattern",
                  TEXT,
                  "The letters of Unicode UTS #35: uuuu or uu, MM, M, MMM or MMMM, dd or d, DDD,"
                      + " HH, mm, ss, S to SSSSSSSSS; other text between quotes."),
              Key.optional(
                  "years",
                  new Takes.Range(1, 9999),
                  "1900-2199, with two digits 2000-2099",
                  "The years it can show."));
      case CODE -> List.of(LETTERS_UPPER, DIGITS_TOO, ACCENTS, ALSO, length("1-12"));
      case WORDS -> List.of(LETTERS_LOWER, DIGITS_TOO, ACCENTS, ALSO, length("1-32"), SEPARATOR);
      case PERSON ->
          List.of(
              LETTERS_LOWER,
              DIGITS_TOO,
              ACCENTS,
              ALSO,
              length("1-32"),
              SEPARATOR,
              Key.optional(
                  "order", words(TextShape.Order.class), "as-given", "How the name is put."));
      case NUMBER ->
          List.of(
              numberOfDigits("1-9"),
              Key.optional(
                  "from", new Takes.WholeNumber(0, 999_999_999), "0", "The smallest number."),
              Key.optional(
                  "to",
                  new Takes.WholeNumber(0, 999_999_999),
                  "the largest of so many digits",
                  "The largest number."));
      case COUNTER ->
          List.of(
              numberOfDigits("4"),
              Key.optional(
                  "start", new Takes.WholeNumber(0, 999_999_999), "1", "The first number."),
              Key.optional(
                  "restarts", new Takes.Texts(), NONE, "The fields on which it begins anew."));
      case CHOICE ->
          List.of(
              Key.required(
                  "values", new Takes.Values(), "A list, or each value with what it means."));
      case GTIN ->
          List.of(
              Key.optional("digits", new Takes.OneOf(List.of(8, 12, 13, 14)), "14", "Its length."));
      case FIXED -> List.of(Key.required("text", TEXT, "The text that always shows."));
    };
  }

  /** What a field of this type is, and an example of one. */
  static String meaning(FieldType type) {
    return switch (type) {
      case DATE -> "A date, a time of day or both.";
      case CODE -> "One piece of letters and digits.";
      case WORDS -> "Some words, joined by a separator.";
      case PERSON -> "A person's name.";
      case NUMBER -> "A whole number that people give.";
      case COUNTER -> "A whole number that counts by itself.";
      case CHOICE -> "One of a few values.";
      case GTIN -> "A GS1 number of a trade item, its check digit proved.";
      case FIXED -> "Text that is always the same.";
    };
  }

  /** A declaration of such a field, and a value and what it shows as. */
  record Example(String declaration, String given, String shown) {}

  static Example example(FieldType type) {
    return switch (type) {
      case DATE -> new Example("{type: date, pattern: uuuu-MM-dd}", "2026-11-25", "2026-11-25");
      case CODE -> new Example("{type: code, length: 2-6}", "kvö", "KVO");
      case WORDS -> new Example("{type: words, length: 1-24}", "AW look book", "aw-look-book");
      case PERSON ->
          new Example("{type: person, order: family-first}", "Ada Example", "example-ada");
      case NUMBER -> new Example("{type: number, digits: 3}", "7", "007");
      case COUNTER -> new Example("{type: counter, digits: 4, start: 1}", "12", "0012");
      case CHOICE -> new Example("{type: choice, values: {F: front, B: back}}", "front", "F");
      case GTIN -> new Example("{type: gtin}", "6291041500213", "06291041500213");
      case FIXED -> new Example("{type: fixed, text: STUDIO}", "", "STUDIO");
    };
  }

  /** What a shape of such a field may change of the field's own keys. */
  static List<String> shapeKeys(FieldType type) {
    return switch (type) {
      case DATE -> List.of("pattern");
      case CODE, WORDS, PERSON -> List.of("letters", "separator");
      case NUMBER, COUNTER -> List.of("digits");
      case CHOICE, GTIN, FIXED -> List.of();
    };
  }

  /** The keys that a field of this type may have. */
  static List<Key> keys(FieldType type) {
    return Stream.concat(COMMON.stream().filter(key -> applies(key, type)), own(type).stream())
        .toList();
  }

  /** Those of {@link #keys}, and those that are refused with a reason of their own. */
  static Set<String> known(FieldType type) {
    return names(Stream.concat(COMMON.stream(), own(type).stream()).toList());
  }

  private static boolean applies(Key key, FieldType type) {
    return switch (key.name) {
      case "shapes" -> type != FieldType.GTIN && type != FieldType.FIXED;
      case "default" -> type != FieldType.COUNTER;
      default -> true;
    };
  }

  static Set<String> names(List<Key> keys) {
    return keys.stream().map(Key::name).collect(Collectors.toCollection(LinkedHashSet::new));
  }
}
