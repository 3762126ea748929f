package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.naming.ConventionTest.given;
import static org.framewright.naming.ConventionTest.nameOf;
import static org.framewright.naming.ConventionTest.sound;

import java.util.List;
import java.util.Map;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a declaration may say, and what is said of one that says something else. */
class DeclarationsTest {
  private static Convention.Parsed parse(String field, String name) {
    return Convention.parse(
        "convention: x\nfields:\n  a: "
            + field
            + "\n  b: {type: code}\nnames: {k: '"
            + name
            + "'}\nfolders: {frames: f}\n",
        "x");
  }

  private static Convention convention(String field) {
    return sound(parse(field, "{a}"));
  }

  private static List<Finding> faults(Convention.Parsed parsed) {
    return switch (parsed) {
      case Convention.Parsed.Faulty(List<Finding> findings) -> findings;
      case Convention.Parsed.Sound sound -> List.of();
    };
  }

  private static List<Finding> faults(String yaml) {
    return faults(Convention.parse(yaml, "x"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "code | 6 | fields.a: a field is declared by its type and more | Write {type: words}"
            + " there.",
        "{} | 6 | fields.a: “type:” is missing | Add it, such as type: words",
        "{type: cod} | 13 | fields.a.type: “cod” is not known here | Is “code” meant?",
        "{type: xxxxxxxx} | 13 | fields.a.type: “xxxxxxxx” is not known here | Write one of date,"
            + " code, words, person, number, counter, choice, gtin, fixed.",
        "{type: [code]} | 13 | fields.a.type: this should be plain text | Write it on the same"
            + " line, in quotes.",
        "{type: code, values: [q]} | 19 | fields.a.values: “values” has no meaning here | Known"
            + " here: type, label, default, required, shapes, letters, digits, accents, also,"
            + " length.",
        "{type: code, length: 2, length: 3} | 30 | fields.a.length: “length” is given twice | Keep"
            + " one of the two.",
        "{type: code, length: 0} | 27 | fields.a.length: “0” is not a number or range from 1 to 255"
            + " | Write it such as 1 or 1-6.",
        "{type: code, length: 3-2} | 27 | fields.a.length: the range “3-2” begins with its larger"
            + " end | Write 2-3.",
        "{type: code, length: 1-256} | 27 | fields.a.length: “1-256” is not a number or range from"
            + " 1 to 255 | Write it such as 1 or 1-6.",
        "{type: code, length: -3} | 27 | fields.a.length: “-3” is not a number or range from 1 to"
            + " 255 | Write it such as 1 or 1-6.",
        "{type: code, digits: maybe} | 27 | fields.a.digits: this should be yes or no | Write yes"
            + " or no.",
        "{type: code, letters: uper} | 28 | fields.a.letters: “uper” is not known here | Is “upper”"
            + " meant?",
        "{type: code, also: 'x y'} | 25 | fields.a.also: spaces, marks, invisible characters, / and"
            + " characters beyond U+FFFF cannot be in a field | Leave them out.",
        "{type: code, also: '/'} | 25 | fields.a.also: spaces, marks, invisible characters, / and"
            + " characters beyond U+FFFF cannot be in a field | Leave them out.",
        "{type: words, separator: ''} | 31 | fields.a.separator: a separator is one character that"
            + " is not in the words themselves | Write separator: \"-\".",
        "{type: words, separator: a} | 31 | fields.a.separator: a separator is one character that"
            + " is not in the words themselves | Write separator: \"-\".",
        "{type: words, separator: '['} | 31 | fields.a.separator: a separator is one character that"
            + " is not in the words themselves | Write separator: \"-\".",
        "{type: words, also: '-'} | 6 | fields.a: a separator is one character that is not in the"
            + " words themselves | Write separator: \"-\".",
        "{type: number, digits: 3, from: 1000} | 38 | fields.a.from: “1000” is not a number from 0"
            + " to 999 | Write such a number.",
        "{type: number, digits: 3, from: 9, to: 8} | 45 | fields.a.to: “8” is not a number from 9"
            + " to 999 | Write such a number.",
        "{type: number, digits: 3, to: x} | 36 | fields.a.to: “x” is not a number from 0 to 999 |"
            + " Write such a number.",
        "{type: counter, digits: 2, start: 100} | 40 | fields.a.start: “100” is not a number from 0"
            + " to 99 | Write such a number.",
        "{type: counter, default: 1} | 31 | fields.a.default: a counter counts; it has no default |"
            + " Leave it out.",
        "{type: code, default: '!'} | 28 | fields.a.default: nothing legal is left of “!” | Give 1"
            + " to 12 capital letters and digits.",
        "{type: gtin, digits: 9} | 27 | fields.a.digits: a product number has 8, 12, 13 or 14"
            + " digits | Write digits: 14, which holds them all.",
        "{type: gtin, digits: 11} | 27 | fields.a.digits: a product number has 8, 12, 13 or 14"
            + " digits | Write digits: 14, which holds them all.",
        "{type: gtin, shapes: {s: {}}} | 31 | fields.a.shapes.s: a gtin field has one shape | Leave"
            + " it out.",
        "{type: fixed} | 6 | fields.a: “text:” is missing | Add it, such as text: STUDIO",
        "{type: choice, values: []} | 29 | fields.a.values: a choice needs values, and none may be"
            + " empty | Give its values.",
        "{type: choice, values: [q, '']} | 29 | fields.a.values: a choice needs values, and none"
            + " may be empty | Give its values.",
        "{type: choice, values: {q: w}, shapes: {s: {}}} | 49 | fields.a.shapes.s: it has no text"
            + " for “q” | Give every value a text.",
        "{type: choice, values: {q: w}, shapes: {'s s': {q: r}}} | 53 | fields.a.shapes.s s: a"
            + " shape's name is made of A-Z, a-z, 0-9 and _ | Rename it.",
        "{type: date} | 6 | fields.a: “pattern:” is missing | Add it, such as pattern: uuuu-MM-dd",
        "{type: date, pattern: uuuu, years: 1000-2000} | 41 | fields.a.years: a thousand years are"
            + " enough | Give years: 1900-2199.",
        "{type: date, pattern: uu, years: 1900-2000} | 28 | fields.a.pattern: years of two digits"
            + " have room for a hundred years only | Give years: 2000-2099, or write uuuu.",
        "{type: date, pattern: 'uuuu-QQ'} | 34 | fields.a.pattern: “QQ” is not a date letter here"
            + " |",
        "{type: date, pattern: \"uuuu'x\"} | 33 | fields.a.pattern: a quote is not closed | Close"
            + " it with another '.",
        "{type: date, pattern: uuuu-uu} | 28 | fields.a.pattern: the year shows twice | Show it"
            + " once.",
        "{type: date, pattern: uuuu-dd} | 28 | fields.a.pattern: it shows the day without the month"
            + " | Show the month too.",
        "{type: date, pattern: DDD} | 28 | fields.a.pattern: it shows the day of the year without"
            + " the year | Show the year too.",
        "{type: date, pattern: uuuuDDDMM} | 28 | fields.a.pattern: it shows the day twice, in the"
            + " year and in the month | Leave one out.",
        "{type: date, pattern: HHss} | 28 | fields.a.pattern: it shows the second without the"
            + " minute | Show the minute too.",
        "{type: date, pattern: mm} | 28 | fields.a.pattern: it shows the minute without the hour |"
            + " Show the hour too.",
        "{type: date, pattern: HHmmSSS} | 28 | fields.a.pattern: it shows the fraction of a second"
            + " without the second | Show the second too.",
        "{type: date, pattern: uuuuMdd} | 28 | fields.a.pattern: an unpadded month runs into the"
            + " digits after it | Double its letter, so that it always has two digits.",
        "{type: date, pattern: \"uuuuM'1'\"} | 29 | fields.a.pattern: an unpadded month runs into"
            + " the digits after it | Double its letter, so that it always has two digits.",
        "{type: date, pattern: \"'x'\"} | 29 | fields.a.pattern: it shows no part of a date or time"
            + " |",
        "{type: date, pattern: 'uuuu#'} | 33 | fields.a.pattern: “#” has no meaning in a date |"
            + " Leave it out.",
      })
  void saysWhatIsWrongWithAFieldAndWhere(String field, int column, String message, String remedy) {
    var faults = faults(parse(field, "{b}"));
    assertThat(faults).extracting(Finding::message).contains(message);
    var fault = faults.stream().filter(f -> f.message().equals(message)).findFirst().orElseThrow();
    assertThat(fault.line()).isEqualTo(3);
    assertThat(fault.column()).isEqualTo(column);
    assertThat(fault.remedy().orElseThrow()).contains(remedy == null ? "Letters: uuuu" : remedy);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "{type: code, length: 3} | abc | ABC",
        "{type: code, length: '1 - 2'} | abc | AB",
        "{type: code, digits: no} | a1b | AB",
        "{type: code, letters: lower, also: '+'} | A+B | a+b",
        "{type: words, separator: ' ', letters: mixed} | Big, bold look | Big bold look",
        "{type: words, accents: yes} | Größe | grösse",
        "{type: words, length: 1-7} | one two three | one-two",
        "{type: words, length: 1-6} | one two three | one",
        "{type: person} | Ada Example | ada-example",
        "{type: person, order: family-first} | Ada Example | example-ada",
        "{type: person, order: family-only} | Ada Maria Example | example",
        "{type: person, order: family-only} | Example, Ada | example",
        "{type: person, order: initials, letters: upper} | Ada Maria Example | AME",
        "{type: number, digits: 3} | 7 | 007",
        "{type: number, digits: 1-3} | 700 | 700",
        "{type: counter, digits: 2, start: 0} | 0 | 00",
        "{type: choice, values: {F: front, B: back}} | Front | F",
        "{type: choice, values: [F, B]} | b | B",
        "{type: gtin, digits: 13} | 06291041500213 | 6291041500213",
        "{type: gtin} | 6291-0415 00213 | 06291041500213",
        "{type: fixed, text: STUDIO} | | STUDIO",
        "{type: date, pattern: \"uuMMdd\"} | 2026-11-25 | 261125",
        "{type: date, pattern: \"HH''mm\"} | 09:05 | 09'05",
      })
  void buildsTheTextOfEachType(String field, String given, String text) {
    assertThat(nameOf(convention(field).build("k", given("a", given == null ? "" : given))).text())
        .isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "{type: number, digits: 3, from: 5, to: 7} | 4 | 4 is not between 5 and 7",
        "{type: number, digits: 3, from: 5, to: 7} | 8 | 8 is not between 5 and 7",
        "{type: number} | x | “x” is not a whole number",
        "{type: code, length: 4} | abc | “ABC” is shorter than 4 characters",
        "{type: choice, values: {F: front}} | fronk | “fronk” is none of its values",
        "{type: gtin} | 12 | “12” is not a product number",
        "{type: gtin, digits: 8} | 6291041500213 | 6291041500213 has more than 8 digits",
        "{type: fixed, text: S} | T | “T” is given, and it is always “S”",
        "{type: date, pattern: uuuu} | 1899 | the year 1899 is not between 1900 and 2199",
        "{type: date, pattern: uuuu} | 2200 | the year 2200 is not between 1900 and 2199",
        "{type: date, pattern: uuuu-MM-dd} | 2026-11 | “2026-11” lacks the day",
        "{type: date, pattern: uuuuMMddHH} | 2026-11-25 | “2026-11-25” lacks the hour",
        "{type: date, pattern: HHmm} | noon | “noon” is not a time of day",
        "{type: date, pattern: uuuu-MM-dd} | noon | “noon” is not a date",
        "{type: date, pattern: uuuuMMddHH} | noon | “noon” is not a date with a time of day",
        "{type: date, pattern: HHmm} | 24:00 | there is no such date or time as “24:00”",
      })
  void saysWhyAValueIsRefused(String field, String given, String why) {
    assertThat(ConventionTest.refused(convention(field).build("k", given("a", given))))
        .containsExactly("a: " + why);
  }

  @Test
  void refusesAValueThatIsLongerThanAThousandCharacters() {
    var code = convention("{type: code}");
    assertThat(nameOf(code.build("k", given("a", "x".repeat(1_000)))).text())
        .isEqualTo("X".repeat(12));
    assertThat(ConventionTest.refused(code.build("k", given("a", "x".repeat(1_001)))))
        .containsExactly("a: the value is longer than 1000 characters");
  }

  @Test
  void takesALocalTimeWithoutItsZone() {
    var built =
        nameOf(
            convention("{type: date, pattern: uuuu-MM-dd}")
                .build("k", given("a", "2026-11-25T14:05:09+01:00")));
    assertThat(built.text()).isEqualTo("2026-11-25");
    assertThat(built.steps())
        .containsExactly(
            new Step(
                "a",
                "2026-11-25T14:05:09+01:00",
                "2026-11-25T14:05:09",
                Text.of("the local time, without its zone")));
  }

  @Test
  void reportsWhatAFieldIs() {
    var field =
        convention("{type: number, label: Look, digits: 2-3, from: 4, to: 200, default: 7}")
            .fields()
            .get("a");
    assertThat(field.label()).isEqualTo("Look");
    assertThat(field.defaultValue()).contains("7");
    assertThat(List.of(field.start(), field.largest())).containsExactly(4L, 200L);
    assertThat(field.width()).isEqualTo(2);
    assertThat(field.example()).isEqualTo("04");
    assertThat(
            convention("{type: choice, values: {F: front, B: back}}").fields().get("a").choices())
        .containsExactly(Map.entry("F", "front"), Map.entry("B", "back"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "fields: {a: {type: code}}, names: {k: '{a}'}, folders: {frames: f} | 1 | 1 | “convention:”"
            + " is missing",
        "convention: x, names: {k: '{a}'}, folders: {frames: f} | 1 | 1 | “fields:” is missing",
        "convention: x, fields: {a: {type: code}}, folders: {frames: f} | 1 | 1 | “names:” is"
            + " missing",
        "convention: x, fields: {a: {type: code}}, names: {k: '{a}'} | 1 | 1 | “folders:” is"
            + " missing",
        "convention: x, fields: {a: {type: code}}, names: {}, folders: {frames: f} | 1 | 51 |"
            + " names: there is no kind of name",
        "convention: x, fields: {a: {type: code}}, names: {a: x}, folders: {frames: f} | 1 | 55 |"
            + " names.a: a field is called “a” too, so that {a} would mean two things",
        "convention: x, fields: {a: {type: code}}, names: {'k k': '{a}'}, folders: {frames: f} | 1"
            + " | 59 | names.k k: the name of a kind is made of A-Z, a-z, 0-9 and _",
        "convention: x, fields: {'a a': {type: code}}, names: {k: x}, folders: {frames: f} | 1 | 33"
            + " | fields.a a: a field's name is made of A-Z, a-z, 0-9 and _",
        "convention: x, fields: {a: {type: code}}, names: {k: '{a}'}, folders: {frames: f/../g} | 1"
            + " | 81 | folders.frames: “f/../g” is not a path inside the job folder",
        "convention: x, fields: {a: {type: code}}, names: {k: '{a}'}, folders: {frames: '/f'} | 1 |"
            + " 81 | folders.frames: “/f” is not a path inside the job folder",
        "convention: x, fields: {a: {type: code}}, names: {k: '{a}'}, folders: {frames: 'f\\g'} | 1"
            + " | 81 | folders.frames: “f\\g” is not a path inside the job folder",
        "convention: x, fields: {a: {type: code}}, names: {k: '{a}'}, folders: {frames: f},"
            + " travels-to: [] | 1 | 97 | travels-to: it names no place",
        "convention: x, fields: {a: {type: code}}, names: {k: '{a}'}, folders: {frames: f},"
            + " travels-to: [moon] | 1 | 97 | travels-to: “moon” is no place that names travel to",
        "convention: x, fields: {a: {type: code}}, names: {k: '{a}'}, folders: {frames: f}, before:"
            + " 201 | 1 | 93 | before: “201” is not a number from 0 to 200",
        "convention: x, fields: {a: {type: code, required: yes}}, names: {k: 'x[{a}]'}, folders:"
            + " {frames: f} | 1 | 71 | names.k: the field a is required, yet shows in an optional"
            + " run",
        "convention: x, fields: {a: {type: code, default: Q}}, names: {k: 'x[{a}]'}, folders:"
            + " {frames: f} | 1 | 68 | names.k: the field a has a default, so the optional run"
            + " around it would always show",
        "convention: x, fields: {a: {type: code}}, names: {k: ''}, folders: {frames: f} | 1 | 56 |"
            + " names.k: it is empty",
      })
  void saysWhatIsWrongWithTheRestOfTheFile(String yaml, int line, int column, String message) {
    var faults = faults("{" + yaml + "}");
    assertThat(faults)
        .filteredOn(fault -> fault.message().equals(message))
        .extracting(Finding::line, Finding::column)
        .containsExactly(org.assertj.core.groups.Tuple.tuple(line, column));
    assertThat(faults).allMatch(fault -> fault.remedy().isPresent());
  }

  @Test
  void takesTextsInBlocksAndReadsYesAndNo() {
    var convention =
        sound(
            Convention.parse(
                """
                convention: >
                  Looks
                  of a day
                about: |
                  One.
                  Two.
                sources: [a book]
                fields:
                  a: {type: code, required: false, digits: "yes"}
                names:
                  k: >
                    {a}
                folders: {frames: f, 'two words': 'x/{a}'}
                travels-to: linux
                """,
                "x"));
    assertThat(convention.title()).isEqualTo("Looks of a day");
    assertThat(convention.about()).isEqualTo("One.\nTwo.");
    assertThat(convention.kinds().get("k").pattern()).isEqualTo("{a}");
    assertThat(convention.folders()).containsOnlyKeys("frames", "two words");
    assertThat(nameOf(convention.buildFolder("two words", given("a", "q"))).text())
        .isEqualTo("x/Q");
  }

  @Test
  void listsEveryReadingUpToAHundred() {
    var two = sound(parse("{type: code, length: 1-3}", "{a}{b}"));
    assertThat(((Reading.Several) two.read("ABCD", "k")).readings())
        .extracting(one -> one.fields().get("a"))
        .containsExactlyInAnyOrder("A", "AB", "ABC");
    var fields = new StringBuilder("convention: x\nfields:\n");
    var pattern = new StringBuilder("x");
    for (int i = 0; i < 9; i++) {
      fields.append("  f" + i + ": {type: code, length: 1-9}\n");
      pattern.append("[{f" + i + "}]");
    }
    var many =
        sound(
            Convention.parse(
                fields + "names: {k: '" + pattern + "'}\nfolders: {frames: f}\n", "x"));
    var readings = ((Reading.Several) many.read("xABCDEF")).readings();
    assertThat(readings).hasSize(100).doesNotHaveDuplicates();
    assertThat(readings).allMatch(one -> String.join("", one.fields().values()).equals("ABCDEF"));
    // One of f0 to f8 holds the one character.
    assertThat(((Reading.Several) many.read("xA")).readings()).hasSize(9);
  }

  @Test
  void readsNoNameLongerThanAnyFileSystemTakes() {
    var convention = convention("{type: code, length: 1-255}");
    assertThat(convention.read("A".repeat(255), "k")).isInstanceOf(Reading.One.class);
    assertThat(convention.read("A".repeat(256), "k"))
        .isInstanceOfSatisfying(
            Reading.None.class,
            none -> {
              assertThat(none.position()).isEqualTo(255);
              assertThat(none.expected()).isEqualTo("the end");
              assertThat(none.message())
                  .isEqualTo("This is no name: it is longer than 255 characters.");
            });
    assertThat(convention.read("A".repeat(256))).isInstanceOf(Reading.None.class);
    assertThat(
            sound(parse("{type: counter}", "{a}"))
                .numbering("k", List.of("0".repeat(256)))
                .next(Map.of()))
        .isEqualTo(1);
  }

  @Test
  void quotesOtherPeoplesTextInOneShortLine() {
    assertThat(Quoted.said("a\u001Bb")).hasToString("“a\\u{1B}b”");
    assertThat(Quoted.bare("x".repeat(80))).isEqualTo("x".repeat(80));
    assertThat(Quoted.bare("x".repeat(81))).isEqualTo("x".repeat(80) + " ...");
    assertThat(Quoted.bare("x".repeat(79) + "\uD83C\uDFA8y")).isEqualTo("x".repeat(79) + " ...");
  }
}
