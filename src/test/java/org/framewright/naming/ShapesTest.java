package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.naming.ConventionTest.given;
import static org.framewright.naming.ConventionTest.nameOf;
import static org.framewright.naming.ConventionTest.refused;
import static org.framewright.naming.ConventionTest.sound;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a field's shapes make of a value, what they read back, and what they leave out. */
class ShapesTest {
  private static String yaml(String... lines) {
    return String.join("\n", lines) + "\n";
  }

  private static Convention convention(String field, String pattern) {
    return sound(parsed(field, pattern));
  }

  private static Convention.Parsed parsed(String field, String pattern) {
    return Convention.parse(
        "convention: test\nfields:\n  f: %s\nnames:\n  k: \"%s\"\nfolders: {frames: 01}\n"
            .formatted(field, pattern),
        "test");
  }

  private static List<String> faults(String field, String pattern) {
    return switch (parsed(field, pattern)) {
      case Convention.Parsed.Sound _ -> List.of();
      case Convention.Parsed.Faulty(List<Finding> findings) ->
          findings.stream().map(Finding::message).toList();
    };
  }

  private static String built(String field, String pattern, String value) {
    return nameOf(convention(field, pattern).build("k", Map.of("f", value))).text();
  }

  private static String read(String field, String pattern, String name) {
    return switch (convention(field, pattern).read(name, "k")) {
      case Reading.One one -> one.fields().get("f");
      case Reading.Several several -> "several " + several.readings();
      case Reading.None none -> none.message();
    };
  }

  /** A value in the main form, and what each shape shows of it and reads back. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{type: date, pattern: uuuu-MM-dd, shapes: {s: uuMMdd}, years:"
            + " 2000-2099}|2026-11-25|261125",
        "{type: date, pattern: uuuu-MM-dd, shapes: {s: {pattern: uuuuDDD}}}|2026-11-25|2026329",
        "{type: date, pattern: uuuu-MM-dd, shapes: {s: d MMMM uuuu}}|2026-11-25|25 November 2026",
        "{type: code, letters: lower, shapes: {s: {letters: upper}}}|nord|NORD",
        "{type: words, shapes: {s: {separator: '_'}}}|wool-coat|wool_coat",
        "{type: words, letters: lower, shapes: {s: {letters: upper, separator:"
            + " '.'}}}|wool-coat|WOOL.COAT",
        "{type: person, shapes: {s: {separator: '_'}}}|ada-example|ada_example",
        "{type: number, digits: 3, shapes: {s: {digits: 5}}}|007|00007",
        "{type: counter, digits: 4, shapes: {s: {digits: 1-4}}}|0012|12",
        "{type: choice, values: [F, B], shapes: {s: {F: front, B: back}}}|F|front",
      })
  void aShapeShowsTheValueAndReadsItBack(String field, String value, String shown) {
    assertThat(built(field, "{f.s}", value)).isEqualTo(shown);
    assertThat(read(field, "{f.s}", shown)).isEqualTo(value);
    assertThat(built(field, "{f}", value)).isEqualTo(value);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{type: date, pattern: uuuu-MM-dd, shapes: {s: uuuu-MM}}|{f.s}|1900-01-01|1900-01-02",
        "{type: date, pattern: uuuu-MM-dd, shapes: {s: uuuu}}|{f.s}|1900-01-01|1900-02-01",
        "{type: date, pattern: uuuuDDD, shapes: {s: uuuu}}|{f.s}|1900-01-01|1900-01-02",
        "{type: date, pattern: \"uuuuMMdd'T'HHmmss\", shapes: {s:"
            + " uuuuMMdd}}|{f.s}|1900-01-01T00:00:00|1900-01-01T01:00:00",
        "{type: date, pattern: HHmmssSSS, shapes: {s: HHmmssSS}}|{f.s}|00:00:00.000|00:00:00.001",
        "{type: code, letters: mixed, length: 3, shapes: {s: {letters: upper}}}|{f.s}|AAA|aaa",
        "{type: words, letters: mixed, shapes: {s: {letters: lower}}}|{f.s}|A|a",
      })
  void aShapeThatLeavesAPartOutIsShownByTwoValues(
      String field, String pattern, String first, String second) {
    assertThat(convention(field, pattern).prove(0))
        .filteredOn(finding -> finding.rule() == Rule.SAME_NAME)
        .singleElement()
        .satisfies(
            finding -> {
              var witness = finding.witness().orElseThrow();
              assertThat(witness.first()).containsEntry("f", first);
              assertThat(witness.second()).containsEntry("f", second);
            });
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{type: date, pattern: uuuu-MM-dd, shapes: {s: uuuuDDD}}",
        "{type: date, pattern: uuuuDDD, shapes: {s: uuuuMMdd}}",
        "{type: date, pattern: HHmmssSS, shapes: {s: HHmmssSS}}",
        "{type: date, pattern: HHmmssSS, shapes: {s: HHmmssSSS}}",
        "{type: code, letters: upper, shapes: {s: {letters: lower}}}",
        "{type: code, letters: mixed, shapes: {s: {letters: mixed}}}",
      })
  void aShapeThatShowsAsMuchLosesNothing(String field) {
    assertThat(convention(field, "{f.s}").prove(0))
        .filteredOn(finding -> finding.rule() == Rule.SAME_NAME)
        .isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "as-given|Ada Example|ada-example",
        "family-first|Ada Example|example-ada",
        "family-first|Example, Ada|example-ada",
        "family-first|Ada Bo Example|example-ada-bo",
        "family-first|Example|example",
        "family-only|Ada Example|example",
        "family-only|Example, Ada|example",
        "family-only|Muster Example, Ada|muster-example",
        "family-only|Example|example",
        "initials|Ada Example|ae",
        "initials|Example, Ada|ae",
        "initials|Ada Bo Example|abe",
        "initials|Example|e",
      })
  void putsAPersonsNameInOrder(String order, String name, String shown) {
    assertThat(built("{type: person, order: " + order + "}", "{f}", name)).isEqualTo(shown);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{type: words, length: 1-9}|wool coat|wool-coat",
        "{type: words, length: 1-8}|wool coat|wool",
        "{type: words, length: 1-5}|wool coat|wool",
        "{type: words, length: 1-4}|wool coat|wool",
        "{type: words, length: 1-3}|wool coat|woo",
        "{type: words, length: 5-5}|wool coats|wool",
        "{type: code, length: 4}|woolcoat|WOOL",
        "{type: code, length: 2-8}|woolcoat|WOOLCOAT",
        "{type: code, length: 2-7}|woolcoat|WOOLCOA",
      })
  void cutsTextAtAWholeWordWhereItCan(String field, String value, String shown) {
    var convention = convention(field, "{f}");
    switch (convention.build("k", Map.of("f", value))) {
      case Built.Name name -> assertThat(name.text()).isEqualTo(shown);
      case Built.Refused refused ->
          assertThat(refused.findings().getFirst().message())
              .isEqualTo("f: “" + shown + "” is shorter than 5 characters");
    }
  }

  @Test
  void saysHowTextBecameLegal() {
    var steps =
        nameOf(
                convention("{type: person, order: family-only}", "{f}")
                    .build("k", Map.of("f", "Ada Évåé")))
            .steps();
    assertThat(steps)
        .extracting(Step::rule)
        .containsExactly(
            "a person's name, family name only", "Latin letters without accents", "small letters");
    assertThat(
            nameOf(
                    convention("{type: code, accents: yes, letters: upper}", "{f}")
                        .build("k", Map.of("f", "kvö & x")))
                .steps())
        .extracting(Step::rule)
        .containsExactly("signs as words", "capital letters", "only capital letters and digits");
    assertThat(
            nameOf(
                    convention("{type: person, order: initials}", "{f}")
                        .build("k", Map.of("f", "Ada Example")))
                .steps())
        .extracting(Step::rule)
        .contains("a person's name, initials");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{type: date, pattern: uuuu-MM-dd}|soon|a date|2026-11-25.",
        "{type: date, pattern: HHmmss}|soon|a time of day|14:05:09.",
        "{type: date, pattern: uuuuMMddHHmmss}|soon|a date with a time of day|2026-11-25T14:05:09.",
        "{type: number, digits: 3}|1000|is not between 0 and 999|Give it more digits",
        "{type: number, digits: 3, from: 5}|4|is not between 5 and 999|Give a number from 5 on.",
      })
  void saysWhatToGive(String field, String value, String what, String remedy) {
    var built = convention(field, "{f}").build("k", Map.of("f", value));
    assertThat(refused(built)).singleElement().asString().contains(what);
    assertThat(((Built.Refused) built).findings().getFirst().remedy().orElseThrow())
        .contains(remedy);
  }

  @ParameterizedTest
  @CsvSource({"3, 000, 999, 999", "1, 0, 9, 9", "2-4, 00, 9999, 9999", "1-2, 0, 99, 99"})
  void takesTheSmallestAndTheLargestNumber(
      String digits, String smallest, String largest, String most) {
    var field = "{type: number, digits: " + digits + "}";
    assertThat(built(field, "{f}", "0")).isEqualTo(smallest);
    assertThat(built(field, "{f}", most)).isEqualTo(largest);
    assertThat(refused(convention(field, "{f}").build("k", Map.of("f", largest + "0")))).hasSize(1);
  }

  @Test
  void aNumberIsReadInItsOwnWidthOnly() {
    var field = "{type: number, digits: 2-4}";
    for (var name : List.of("00", "07", "99", "100", "999", "1000", "9999")) {
      assertThat(read(field, "{f}", name)).isEqualTo(name);
    }
    for (var name : List.of("7", "007", "0100", "10000")) {
      assertThat(read(field, "{f}", name)).startsWith("This is no k name");
    }
  }

  @ParameterizedTest
  @CsvSource({
    "14, 06291041500213, 6291041500213",
    "13, 6291041500213, 06291041500213",
    "14, 06291041500213, 629-1041500213",
  })
  void aProductNumberIsShownInSoManyDigits(int digits, String shown, String given) {
    var field = "{type: gtin, digits: " + digits + "}";
    assertThat(built(field, "{f}", given)).isEqualTo(shown);
    assertThat(read(field, "{f}", shown)).isEqualTo(shown);
    assertThat(read(field, "{f}", shown.substring(0, digits - 1) + "4"))
        .contains(digits + " digits with a right check digit");
  }

  @Test
  void aProductNumberThatIsTooLongOrWrongIsRefused() {
    assertThat(
            refused(
                convention("{type: gtin, digits: 8}", "{f}")
                    .build("k", given("f", "6291041500213"))))
        .containsExactly("f: 6291041500213 has more than 8 digits");
    assertThat(refused(convention("{type: gtin}", "{f}").build("k", given("f", "6291041500214"))))
        .containsExactly(
            "f: the check digit of 6291041500214 is wrong; after these digits it is 3");
    assertThat(refused(convention("{type: gtin}", "{f}").build("k", given("f", "62910415002"))))
        .containsExactly("f: “62910415002” is not a product number");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{type: choice, values: [F, B], shapes: {s: {F: front}}}|it has no text for “B”",
        "{type: choice, values: [F, B], shapes: {s: {F: front, B: back, C: c}}}|“C” has no meaning"
            + " here",
        "{type: date, pattern: uuuu, shapes: {s: {letters: upper}}}|“letters” has no meaning here",
        "{type: number, shapes: {s: {letters: upper}}}|“letters” has no meaning here",
        "{type: code, shapes: {s: {digits: 3}}}|“digits” has no meaning here",
        "{type: gtin, shapes: {s: {digits: 13}}}|a gtin field has one shape",
        "{type: fixed, text: x, shapes: {s: {text: y}}}|a fixed field has one shape",
        "{type: code, shapes: {'a b': {letters: upper}}}|a shape's name is made of",
        "{type: code, shapes: [a]}|this should be a list of “key: value”",
        "{type: code, label: [a]}|this should be plain text",
      })
  void saysWhatIsWrongWithAShape(String field, String message) {
    assertThat(faults(field, "x{f}")).anyMatch(fault -> fault.contains(message));
  }

  @Test
  void aValueOfAllShapesCountsTowardsTheSize() {
    assertThat(
            faults(
                "{type: choice, values: [a, b], shapes: {s: {a: %s, b: %s}}}"
                    .formatted("x".repeat(200), "y".repeat(200)),
                "{f.s}"))
        .isEmpty();
  }

  @Test
  void takesWhatIsAsLongAsItMayBeAndNoMore() {
    assertThat(faults("{type: code}", "x".repeat(255) + "{f}")).isEmpty();
    assertThat(faults("{type: code}", "x".repeat(256) + "{f}"))
        .containsExactly("names.k: the text in it is longer than 255 characters");
    assertThat(faults("{type: code, label: " + "x".repeat(255) + "}", "{f}")).isEmpty();
    assertThat(faults("{type: code, label: " + "x".repeat(256) + "}", "{f}"))
        .containsExactly("fields.f.label: this text is longer than 255 characters");
    assertThat(faults("{type: code}", "[a".repeat(20) + "{f}" + "]".repeat(20) + "x"))
        .noneMatch(fault -> fault.contains("nested deeper"));
    assertThat(faults("{type: code}", "[a".repeat(21) + "{f}" + "]".repeat(21) + "x"))
        .anyMatch(fault -> fault.contains("nested deeper than 20"));
  }

  @Test
  void suggestsTheShapeThatIsMeant() {
    var finding =
        ((Convention.Parsed.Faulty)
                parsed(
                    "{type: date, pattern: uuuu, shapes: {short: uu}, years: 2000-2099}",
                    "{f.shrt}"))
            .findings()
            .getFirst();
    assertThat(finding.remedy()).contains("Declare it under fields.f.shapes. Is “short” meant?");
  }

  @Test
  void aFieldInsideAnotherNameCountsAsShown() {
    assertThat(
            switch (Convention.parse(
                yaml(
                    "convention: t",
                    "fields: {f: {type: code}}",
                    "names: {a: 'x{f}', b: '{a}_{f}'}",
                    "folders: {frames: 01}"),
                "t")) {
              case Convention.Parsed.Sound _ -> List.of();
              case Convention.Parsed.Faulty(List<Finding> findings) ->
                  findings.stream().map(Finding::message).toList();
            })
        .containsExactly("names.b: the field f shows twice in one name");
  }

  /** Windows takes 259 characters before the NUL: 60 + 1 + 93 + 1 + 7 + 1 + 91 + 5. */
  @ParameterizedTest
  @CsvSource({"91, 0", "92, 1"})
  void findsAPathThatIsOneTooLong(int length, int findings) {
    var yaml =
        """
        convention: test
        fields: {f: {type: code, length: 93}, g: {type: code, length: %d}}
        names: {job: "{f}", k: "{g}"}
        folders: {frames: "01", more: "0123456"}
        """
            .formatted(length);
    assertThat(sound(Convention.parse(yaml, "t")).prove(0))
        .filteredOn(finding -> finding.rule() == Rule.TOO_LONG)
        .hasSize(findings);
  }

  @Test
  void anOptionalRunShowsWholeOrNotAtAll() {
    var convention =
        sound(
            Convention.parse(
                yaml(
                    "convention: t",
                    "fields: {a: {type: code}, b: {type: code}, c: {type: code}}",
                    "names: {k: 'x{c}[_{a}-{b}]'}",
                    "folders: {frames: 01}"),
                "t"));
    assertThat(nameOf(convention.build("k", given("c", "C"))).text()).isEqualTo("xC");
    assertThat(nameOf(convention.build("k", given("c", "C", "a", "A", "b", "B"))).text())
        .isEqualTo("xC_A-B");
    assertThat(refused(convention.build("k", given("c", "C", "b", "B"))))
        .containsExactly("b shows only together with a");
    var nested =
        sound(
            Convention.parse(
                yaml(
                    "convention: t",
                    "fields: {a: {type: code}, b: {type: code}, c: {type: code}}",
                    "names: {k: 'x{c}[_{a}[-{b}]]'}",
                    "folders: {frames: 01}"),
                "t"));
    assertThat(nameOf(nested.build("k", given("c", "C", "a", "A"))).text()).isEqualTo("xC_A");
    assertThat(refused(nested.build("k", given("c", "C", "b", "B"))))
        .containsExactly("b shows only together with a");
  }

  @Test
  void aNameThatIsTooLongForItsPlacesIsNotBuilt() {
    var convention =
        sound(
            Convention.parse(
                yaml(
                    "convention: t",
                    "fields: {a: {type: code, length: 1-125, accents: yes}, b: {type: code, length:"
                        + " 1-130}}",
                    "names: {k: '{a}_{b}'}",
                    "folders: {frames: 01}",
                    "travels-to: [linux]"),
                "t"));
    assertThat(
            nameOf(convention.build("k", given("a", "Ö".repeat(60), "b", "B".repeat(129)))).text())
        .hasSize(190);
    assertThat(refused(convention.build("k", given("a", "Ö".repeat(60), "b", "B".repeat(130)))))
        .containsExactly("the name would have 251 bytes; Linux takes 250");
  }

  /** HFS+ and, seen from a Mac, FAT and shares list such letters in two parts. */
  @Test
  void aNameIsReadWhicheverWayItsAccentsAreWritten() {
    var convention = convention("{type: words, accents: yes}", "{f}");
    var read = convention.read("gr\u00f6sse-caf\u00e9");
    assertThat(((Reading.One) read).fields()).containsEntry("f", "gr\u00f6sse-caf\u00e9");
    assertThat(convention.read("gro\u0308sse-cafe\u0301")).isEqualTo(read);
    assertThat(convention.read("gro\u0308sse-cafe\u0301", "k")).isEqualTo(read);
  }
}
