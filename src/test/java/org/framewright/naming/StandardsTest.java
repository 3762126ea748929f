package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.naming.ConventionTest.given;
import static org.framewright.naming.ConventionTest.nameOf;
import static org.framewright.naming.ConventionTest.refused;
import static org.framewright.naming.ConventionTest.sound;

import com.ibm.icu.text.Normalizer2;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The language held against published standards and reference implementations. */
@Tag("slow")
class StandardsTest {
  private static Convention convention(String field, String pattern) {
    return sound(
        Convention.parse(
            "convention: x\nfields: {f: %s}\nnames: {k: '%s'}\nfolders: {frames: f}\n"
                .formatted(field, pattern),
            "x"));
  }

  private static String built(Convention convention, String value) {
    return nameOf(convention.build("k", given("f", value))).text();
  }

  /** Unicode UTS #35, date field symbols, by way of java.time's own implementation of them. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "uuuu-MM-dd",
        "uuuuMMdd",
        "uuMMdd",
        "yyyy_MM",
        "d.M.uuuu",
        "dd MMM uuuu",
        "MMMM d uuuu",
        "uuuu-DDD",
        "uuuu",
        "uuuuMMdd'T'HHmm",
        "uuuu-MM-dd HH.mm.ss",
        "HHmmssSSS",
        "H-m-s",
        "uuuuMMddHHmmssSSSSSSSSS",
        "'week''s' dd",
      })
  void showsDatesAsTheReferenceImplementationDoes(String pattern) {
    var convention =
        convention("{type: date, years: 2000-2099, pattern: \"" + pattern + "\"}", "{f}");
    var reference = DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH);
    var random = new Random(35);
    for (int i = 0; i < 2_000; i++) {
      var time =
          LocalDateTime.of(2000, 1, 1, 0, 0)
              .plusSeconds(random.nextLong(3_155_000_000L))
              .plusNanos(random.nextInt(1_000_000_000));
      var name =
          nameOf(
              convention.build(
                  "k", given("f", DateTimeFormatter.ISO_LOCAL_DATE_TIME.format(time))));
      assertThat(name.text()).isEqualTo(reference.format(time));
      assertThat(convention.read(name.text())).isEqualTo(new Reading.One("k", name.values()));
    }
  }

  /** Every day of a leap year and of the years beside it is a name, and no other day is. */
  @ParameterizedTest
  @CsvSource({
    "uuuu-MM-dd,2024-02-29,2023-02-29",
    "dd-MM-uuuu,29-02-2000,29-02-1900",
    "uuuuDDD,2024366,2023366",
    "MM-dd,02-29,02-30",
    "uuuu-MM-dd,2026-04-30,2026-04-31",
    "HHmm,2359,2400",
    "HHmmss,235959,235960",
  })
  void knowsTheCalendar(String pattern, String is, String isNot) {
    var convention = convention("{type: date, pattern: " + pattern + "}", "{f}");
    assertThat(convention.read(is)).isInstanceOf(Reading.One.class);
    assertThat(convention.read(isNot)).isInstanceOf(Reading.None.class);
  }

  /** ISO 8601: basic and extended formats, with T, a comma or a dot, and a zone. */
  @ParameterizedTest
  @CsvSource({
    "1985-04-12,19850412",
    "19850412,19850412",
    "1985-04-12T10:15:30,19850412",
    "19850412T101530,19850412",
    "1985-04-12T10:15:30Z,19850412",
    "1985-04-12T10:15:30+04:00,19850412",
  })
  void takesTheExamplesOfIso8601(String example, String text) {
    assertThat(built(convention("{type: date, pattern: uuuuMMdd}", "{f}"), example))
        .isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "1985-04-12T23:20:50;232050000",
        "1985-04-12T23:20:50.5;232050500",
        "1985-04-12T23:20:50,25;232050250",
        "23:20:50.5;232050500",
        "T232050;232050000",
        "232050;232050000",
      })
  void takesTimesAsIso8601WritesThem(String example, String text) {
    assertThat(built(convention("{type: date, pattern: HHmmssSSS}", "{f}"), example))
        .isEqualTo(text);
  }

  /**
   * GS1's documented example of the check digit; the others, computed by the same weights, are
   * numbers of the prefixes 02 and 20 to 29, which GS1 keeps for restricted circulation.
   */
  @ParameterizedTest
  @CsvSource({
    "629104150021,3,06291041500213",
    "200000000000,8,02000000000008",
    "291234567890,6,02912345678906",
  })
  void checksTheDigitsOfGs1(String digits, int check, String stored) {
    var convention = convention("{type: gtin}", "{f}");
    assertThat(Gtin.checkDigit(digits)).isEqualTo(check);
    assertThat(built(convention, digits + check)).isEqualTo(stored);
    assertThat(convention.read(stored)).isInstanceOf(Reading.One.class);
    for (int wrong = 0; wrong < 10; wrong++) {
      if (wrong != check) {
        assertThat(refused(convention.build("k", given("f", digits + wrong))))
            .singleElement()
            .asString()
            .contains("it is " + check);
        assertThat(convention.read("0" + digits + wrong)).isInstanceOf(Reading.None.class);
      }
    }
  }

  /** RFC 6570, section 3.2.2, level 1: var := "value", and no more. */
  @Test
  void showsASimpleExpressionAsUriTemplatesDo() {
    var convention =
        sound(
            Convention.parse(
                """
                convention: x
                fields:
                  var: {type: code, letters: mixed}
                  hello: {type: words, letters: mixed, also: '!', separator: ' '}
                names: {one: '{var}', two: 'x-{hello}'}
                folders: {frames: f}
                """,
                "x"));
    assertThat(nameOf(convention.build("one", given("var", "value"))).text()).isEqualTo("value");
    // Level 1 would percent-encode "Hello World!"; a name shows it as it is, where its field may.
    assertThat(nameOf(convention.build("two", given("hello", "Hello World!"))).text())
        .isEqualTo("x-Hello World!");
  }

  /**
   * DCF, CIPA DC-009: four characters of 0-9 A-Z _ and a number from 0001 to 9999. A convention for
   * them reads them, and its counter has room for 9999.
   */
  @Test
  void readsTheNamesOfCameras() {
    var convention =
        sound(
            Convention.parse(
                """
                convention: cameras
                fields:
                  body: {type: code, length: 4, also: _}
                  number: {type: counter, digits: 4, restarts: body}
                names: {frame: '{body}{number}'}
                folders: {frames: f}
                """,
                "x"));
    assertThat(convention.prove(9999))
        .allMatch(
            finding -> finding.rule() == Rule.NOT_PORTABLE || finding.rule() == Rule.CASE_CLASH)
        .isEmpty();
    for (var name : List.of("IMG_0001", "_DSC9999", "ABCD0042")) {
      assertThat(convention.read(name)).isInstanceOf(Reading.One.class);
    }
    for (var name : List.of("IMG_0000", "img_0001", "IMG_001")) {
      assertThat(convention.read(name)).isInstanceOf(Reading.None.class);
    }
    assertThat(convention.prove(10_000))
        .extracting(Finding::rule)
        .containsExactly(Rule.COUNTER_FULL);
  }

  /** UAX #15, NormalizationTest.txt part 0, first lines: the source and its NFC. */
  @ParameterizedTest
  @CsvSource({
    "\u1E0A,\u1E0A",
    "D\u0307,\u1E0A",
    "\u1E0C,\u1E0C",
    "D\u0323,\u1E0C",
    "E\u0304\u0300,\u1E14",
    "\u212B,\u00C5",
    "A\u030A,\u00C5",
  })
  void normalisesTextAsUnicodeDoes(String source, String composed) {
    assertThat(Normalizer2.getNFCInstance().normalize(source)).isEqualTo(composed);
    assertThat(built(convention("{type: counter}", source), "1")).isEqualTo(composed);
  }

  /** Whatever people write, the name is in normalisation form C and reads back as built. */
  @Tag("slow")
  @Test
  void everyTextOfPeopleBecomesALegalOneOrIsRefused() {
    var convention =
        sound(
            Convention.parse(
                """
                convention: x
                fields:
                  a: {type: words, letters: mixed, accents: yes, length: 1-20}
                  b: {type: code, length: 1-8}
                  c: {type: person, order: family-first}
                names: {k: '{a}_{b}_{c}'}
                folders: {frames: f}
                """,
                "x"));
    var random = new Random(15);
    int names = 0;
    for (int i = 0; i < 3_000; i++) {
      var text = new StringBuilder();
      for (int k = random.nextInt(12); k >= 0; k--) {
        int c = random.nextInt(random.nextBoolean() ? 0x250 : 0x3000);
        text.appendCodePoint(random.nextInt(40) == 0 ? 0x1F3A8 : c);
      }
      var raw = text.toString();
      if (convention.build("k", given("a", raw, "b", raw, "c", raw)) instanceof Built.Name name) {
        names++;
        assertThat(Normalizer2.getNFCInstance().isNormalized(name.text())).isTrue();
        assertThat(convention.read(name.text())).isEqualTo(new Reading.One("k", name.values()));
        assertThat(nameOf(convention.build("k", Map.copyOf(name.values()))).text())
            .isEqualTo(name.text());
      }
    }
    assertThat(names).isGreaterThan(1_000);
  }
}
