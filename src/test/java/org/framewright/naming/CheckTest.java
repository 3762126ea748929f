package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.naming.ConventionTest.sound;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CheckTest {
  private static Convention convention(String fields, String names) {
    return sound(
        Convention.parse(
            "convention: test\nfields:\n%s\nnames:\n%s\nfolders: {frames: 01_frames}\n"
                .formatted(fields.indent(2), names.indent(2)),
            "test"));
  }

  private static List<Finding> check(String fields, String names) {
    return convention(fields, names).prove(0);
  }

  private static Finding only(List<Finding> findings, Rule rule) {
    var some = findings.stream().filter(finding -> finding.rule() == rule).toList();
    assertThat(some).hasSize(1);
    return some.getFirst();
  }

  private static List<Rule> rules(List<Finding> findings) {
    return findings.stream().map(Finding::rule).distinct().toList();
  }

  @Test
  void showsAShortestNameWithTwoReadings() {
    var finding =
        only(
            check("a: {type: code, length: 1-9}\nb: {type: code, length: 1-9}", "frame: '{a}{b}'"),
            Rule.TWO_READINGS);
    var witness = finding.witness().orElseThrow();
    assertThat(witness.names()).singleElement().asString().hasSize(3);
    assertThat(witness.first()).isNotEqualTo(witness.second());
    assertThat(finding.severity()).isEqualTo(Severity.ERROR);
    assertThat(finding.line()).isEqualTo(7);
    assertThat(finding.remedy()).isPresent();
  }

  @Test
  void findsNoFaultWhereASeparatorKeepsTwoCodesApart() {
    assertThat(
            check("a: {type: code, length: 1-9}\nb: {type: code, length: 1-9}", "frame: '{a}_{b}'"))
        .isEmpty();
  }

  @Test
  void findsTheSeparatorInsideAField() {
    assertThat(
            rules(
                check(
                    "a: {type: words, separator: '_'}\nb: {type: words, separator: '_'}",
                    "frame: '{a}_{b}'")))
        .containsExactly(Rule.TWO_READINGS);
  }

  @Test
  void findsAnOptionalRunThatLooksLikeWhatFollows() {
    assertThat(
            rules(
                check(
                    """
                    a: {type: code, length: 2}
                    b: {type: code, length: 2}
                    c: {type: code, length: 2}\
                    """,
                    "frame: '{a}[_{b}][_{c}]'")))
        .containsExactly(Rule.TWO_READINGS);
  }

  @Test
  void findsAShapeThatLeavesAPartOut() {
    var finding =
        only(
            check(
                "day: {type: date, pattern: uuuu-MM-dd, shapes: {month: uuuu-MM}}",
                "frame: '{day.month}'"),
            Rule.SAME_NAME);
    assertThat(finding.witness().orElseThrow().names()).containsExactly("1900-01");
  }

  @Test
  void findsACounterThatRestartsOnAFieldThatIsNotShown() {
    var finding =
        only(
            check(
                "setup: {type: number, digits: 3}\ntake: {type: counter, restarts: setup}",
                "frame: '{setup}_{take}'\nselect: 'S{take}'"),
            Rule.SAME_NAME);
    assertThat(finding.where()).isEqualTo("names.select");
    assertThat(finding.witness().orElseThrow().first()).containsEntry("setup", "000");
    assertThat(finding.witness().orElseThrow().second().get("setup")).isNotEqualTo("000");
  }

  @Test
  void findsANameOfTwoKinds() {
    var finding =
        only(
            check(
                "client: {type: code, length: 2-6}\nsetup: {type: number, digits: 3}",
                "job: '{client}_x'\nframe: '{setup}_x'"),
            Rule.WRONG_KIND);
    assertThat(finding.witness().orElseThrow().names()).containsExactly("000_x");
  }

  @Test
  void notesAKindThatKeepsTheNameOfAnother() {
    var finding =
        only(check("take: {type: counter}", "frame: '{take}'\nselect: '{frame}'"), Rule.WRONG_KIND);
    assertThat(finding.severity()).isEqualTo(Severity.NOTE);
  }

  /** Byte order, computed: 2026-1-5 after 2026-10-05; so months and days want two digits. */
  @ParameterizedTest
  @ValueSource(strings = {"uuuu-M-d", "uuuu-MM-d", "dd-MM-uuuu", "MM-dd-uuuu", "uuuu-MMM-dd"})
  void findsDatesThatDoNotSortByTime(String pattern) {
    assertThat(rules(check("day: {type: date, pattern: " + pattern + "}", "job: '{day}_x'")))
        .containsExactly(Rule.SORT_ORDER);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "uuuu-MM-dd",
        "uuuuMMdd",
        "uuMMdd",
        "uuuuDDD",
        "uuuuMMdd'T'HHmmss",
        "HH.mm.ss.SSS"
      })
  void findsNoFaultInDatesThatSortByTime(String pattern) {
    assertThat(check("day: {type: date, pattern: \"" + pattern + "\"}", "job: '{day}_x'"))
        .isEmpty();
  }

  /** YYMMDD turns round with the century: 000101 sorts before 991231. */
  @Test
  void findsTheCenturyInYearsOfTwoDigits() {
    var finding =
        check("day: {type: date, pattern: uuMMdd, years: 1950-2049}", "job: '{day}_x'").getFirst();
    assertThat(finding.rule()).isEqualTo(Rule.SORT_ORDER);
  }

  /** Byte order, computed: L1, L10, L2; by numbers L1, L2, L10. */
  @Test
  void findsNumbersWithoutZerosInByteOrderOnly() {
    var finding =
        only(check("take: {type: counter, digits: 1-4}", "frame: 'L{take}'"), Rule.SORT_ORDER);
    assertThat(finding.message()).contains("byte order");
    assertThat(finding.witness().orElseThrow().names()).containsExactly("L2", "L10");
  }

  @Test
  void findsACounterBeforeTheDateThatItRestartsOn() {
    assertThat(
            rules(
                check(
                    "day: {type: date, pattern: uuuuMMdd}\ntake: {type: counter, restarts: day}",
                    "frame: '{take}_{day}'")))
        .containsExactly(Rule.SORT_ORDER);
    assertThat(
            check(
                "day: {type: date, pattern: uuuuMMdd}\ntake: {type: counter}",
                "frame: '{take}_{day}'"))
        .isEmpty();
  }

  /** Microsoft, Naming Files, Paths, and Namespaces. */
  @ParameterizedTest
  @CsvSource({
    "'a<b',has one of",
    "'a>b',has one of",
    "'a:b',has one of",
    "'a\"b',has one of",
    "'a\\b',has one of",
    "'a|b',has one of",
    "'a?b',has one of",
    "'a*b',has one of",
    "CON,is reserved",
    "prn,is reserved",
    "AUX.old,is reserved",
    "nul,is reserved",
    "COM1,is reserved",
    "com9,is reserved",
    "LPT1.x,is reserved",
    "COM\u00B9,is reserved",
    "LPT\u00B3,is reserved",
    "'a.',ends with a dot",
    "'a ',ends with a dot",
  })
  void findsWhatWindowsDoesNotTake(String text, String what) {
    var finding =
        only(
            check("a: {type: choice, values: ['" + text + "', ok]}", "frame: '{a}'"),
            Rule.NOT_PORTABLE);
    assertThat(finding.severity()).isEqualTo(Severity.ERROR);
    assertThat(finding.message()).contains(what).contains("Windows");
    assertThat(finding.witness().orElseThrow().names()).containsExactly(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"CONSOLE", "COM", "COM10", "COM0", "xCON", "a.b", "a'b", "NULL"})
  void findsNoFaultInWhatWindowsTakes(String text) {
    assertThat(check("a: {type: choice, values: [\"" + text + "\"]}", "frame: '{a}'")).isEmpty();
  }

  @Test
  void findsInvisibleCharactersInText() {
    assertThat(
            only(check("a: {type: counter}", "frame: \"{a}\\u200Bx\""), Rule.NOT_PORTABLE)
                .message())
        .contains("invisible");
  }

  @Test
  void findsNamesThatAreHiddenOrLookLikeAnOption() {
    assertThat(only(check("a: {type: counter}", "frame: '.{a}'"), Rule.NOT_PORTABLE).severity())
        .isEqualTo(Severity.WARNING);
    assertThat(only(check("a: {type: counter}", "frame: '-{a}'"), Rule.NOT_PORTABLE).message())
        .contains("hyphen");
  }

  /** POSIX.1 XBD, portable filename character set: A-Z a-z 0-9 . _ - and no hyphen in front. */
  @Test
  void holdsNamesToThePortableSetWhereTheyTravelThere() {
    var yaml =
        """
        convention: x
        fields: {a: {type: counter}}
        names: {frame: '%s'}
        folders: {frames: f}
        travels-to: [posix]
        """;
    for (var bad : List.of("{a} x", "{a}é", "{a}+", "-{a}")) {
      assertThat(rules(sound(Convention.parse(yaml.formatted(bad), "x")).prove(0)))
          .containsExactly(Rule.NOT_PORTABLE);
    }
    assertThat(sound(Convention.parse(yaml.formatted("A.b_c-{a}"), "x")).prove(0)).isEmpty();
  }

  /** ext4, xfs and btrfs take 255 bytes; NTFS, exFAT and APFS 255 UTF-16 units. */
  @Tag("slow")
  @Test
  void countsBytesForLinuxAndUnitsForWindows() {
    var yaml =
        """
        convention: x
        fields: {a: {type: words, accents: yes, length: 1-150}}
        names: {frame: 'x{a}'}
        folders: {frames: f}
        travels-to: [%s]
        """;
    assertThat(sound(Convention.parse(yaml.formatted("windows"), "x")).prove(0)).isEmpty();
    var finding =
        only(sound(Convention.parse(yaml.formatted("linux"), "x")).prove(0), Rule.TOO_LONG);
    assertThat(finding.message()).contains("301 bytes");
    assertThat(finding.witness().orElseThrow().names().getFirst()).hasSize(151);
  }

  /** A path of 260 with its NUL on Windows. */
  @Test
  void findsAPathThatIsTooLong() {
    assertThat(
            only(
                    check(
                        "a: {type: words, length: 1-120}\nb: {type: code, length: 1-90}",
                        "job: '{a}'\nframe: '{b}'"),
                    Rule.TOO_LONG)
                .message())
        .contains("path");
  }

  /** Only Windows, and what is shared through a cloud with it, limits whole paths. */
  @ParameterizedTest
  @CsvSource({"windows, true", "cloud, true", "macos, false", "linux, false", "posix, false"})
  void limitsPathsWhereTheSystemDoes(String target, boolean limited) {
    var yaml =
        """
        convention: x
        fields: {a: {type: code, length: 1-120}, b: {type: code, length: 1-90}}
        names: {job: '{a}', frame: 'x{b}'}
        folders: {frames: "0123456789/0123456789/0123456789/0123456789"}
        travels-to: [%s]
        """
            .formatted(target);
    assertThat(sound(Convention.parse(yaml, "x")).prove(0))
        .filteredOn(finding -> finding.message().contains("path"))
        .hasSize(limited ? 1 : 0);
  }

  @Test
  void findsACounterThatIsFull() {
    var convention = convention("take: {type: counter, digits: 3}", "frame: '{take}'");
    assertThat(convention.prove(999)).isEmpty();
    var finding = only(convention.prove(1000), Rule.COUNTER_FULL);
    assertThat(finding.witness().orElseThrow().names()).containsExactly("999");
    assertThat(finding.remedy()).contains("Give it digits: 4.");
  }

  @Test
  void findsNamesThatDifferInCaseOnly() {
    var finding =
        only(
            check("a: {type: code, letters: mixed, length: 1-4}", "frame: '{a}'"), Rule.CASE_CLASH);
    assertThat(finding.witness().orElseThrow().names()).hasSize(2).allMatch(n -> n.length() == 1);
  }

  /** A key of one letter and a key of two, NFC(lower(upper(NFD))): straße and STRASSE. */
  @Test
  void findsThatASharpSIsTwoLetters() {
    assertThat(
            only(
                    check("a: {type: choice, values: [straße, STRASSE]}", "frame: '{a}'"),
                    Rule.CASE_CLASH)
                .witness()
                .orElseThrow()
                .names())
        .containsExactlyInAnyOrder("straße", "STRASSE");
  }

  @Test
  void notesAFieldThatNoNameShows() {
    assertThat(
            only(check("a: {type: counter}\nb: {type: code}", "frame: '{a}'"), Rule.UNUSED_FIELD)
                .where())
        .isEqualTo("fields.b");
  }

  @Tag("slow")
  @Test
  void answersAboutTwoHundredFields() {
    var fields =
        IntStream.range(0, 200)
            .mapToObj(i -> "f" + i + ": {type: words, length: 1-150}")
            .collect(Collectors.joining("\n"));
    var names =
        IntStream.range(0, 4)
            .mapToObj(
                k ->
                    IntStream.range(50 * k, 50 * k + 50)
                        .mapToObj(i -> i % 50 == 0 ? "k" + k + "-{f" + i + "}" : "[_{f" + i + "}]")
                        .collect(Collectors.joining("", "k" + k + ": '", "'")))
            .collect(Collectors.joining("\n"));
    assertThat(check(fields, names))
        .allMatch(finding -> finding.where().startsWith("names.k"))
        .extracting(Finding::rule)
        .contains(Rule.TOO_LONG);
  }

  @Tag("slow")
  @Test
  void saysWhenAConventionIsTooLargeToProve() {
    var fields =
        IntStream.range(0, 40)
            .mapToObj(i -> "f" + i + ": {type: words, length: 1-240, separator: '_'}")
            .collect(Collectors.joining("\n"));
    var sound =
        IntStream.range(0, 40).mapToObj(i -> "{f" + i + "}").collect(Collectors.joining("-"));
    assertThat(rules(check(fields, "frame: '" + sound + "'")))
        .containsAnyOf(Rule.TOO_LONG, Rule.TOO_LARGE)
        .doesNotContain(Rule.TWO_READINGS);
  }
}
