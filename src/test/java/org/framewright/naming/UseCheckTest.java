package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.naming.ConventionTest.sound;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UseCheckTest {
  private static final String FIELDS =
      """
      day:     {type: date, pattern: uuuuMMdd}
      time:    {type: date, pattern: "uuuuMMdd'T'HHmmss"}
      client:  {type: code, length: 2-6}
      setup:   {type: number, digits: 3}
      take:    {type: counter, digits: 4, restarts: setup}
      version: {type: number, digits: 2}
      """;

  private static final String NAMES =
      """
      job: "{day}_{client}"
      frame: "{time}_{setup}_{take}"
      select: "{client}_{setup}_{take}"
      retouched: "{select}_v{version}"
      """;

  /** What the check finds besides its proofs. */
  private static List<Finding> findings(String fields, String names) {
    var convention =
        sound(
            Convention.parse(
                "convention: test\nfields:\n%s\nnames:\n%s\nfolders: {frames: 01_frames}\n"
                    .formatted(fields.indent(2), names.indent(2)),
                "test"));
    var proofs = convention.prove(0);
    return convention.check(0).stream().filter(finding -> !proofs.contains(finding)).toList();
  }

  private static Finding finding(String fields, String names) {
    assertThat(findings(fields, names)).hasSize(1);
    return findings(fields, names).getFirst();
  }

  private static String without(String text, String key) {
    return text.replaceFirst("(?m)^" + key + ":.*\\n", "");
  }

  @Test
  void findsNothingWhereEverythingIsThere() {
    assertThat(findings(FIELDS, NAMES)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "job, ERROR, no job can be started, Add job: \"{day}\".",
    "frame, ERROR, frames cannot get names, a pattern with a counter",
    "select, WARNING, selects cannot be handed off, Add select: \"{frame}\"",
    "retouched, NOTE, by the names of selects only, \"{select}_v{version}\"",
  })
  void findsANameThatAJobNeeds(String kind, Severity severity, String message, String remedy) {
    var names =
        kind.equals("select")
            ? without(NAMES, "select").replace("{select}", "{client}_{setup}_{take}")
            : without(NAMES, kind);
    assertThat(findings(FIELDS, names))
        .filteredOn(finding -> finding.rule() == Rule.RESERVED_NAME)
        .singleElement()
        .satisfies(
            finding -> {
              assertThat(finding.severity()).isEqualTo(severity);
              assertThat(finding.message())
                  .startsWith("there is no names." + kind)
                  .contains(message);
              assertThat(finding.remedy().orElseThrow()).contains(remedy);
            });
  }

  @ParameterizedTest
  @CsvSource({"job, jobs, 11", "frame, Frame, 12", "frame, frames, 12", "select, selects, 13"})
  void findsANameThatIsMisspelt(String kind, String written, int line) {
    var names = without(NAMES, "retouched").replaceFirst("(?m)^" + kind + ":", written + ":");
    assertThat(findings(FIELDS, names))
        .filteredOn(finding -> finding.message().startsWith("there is no names." + kind))
        .singleElement()
        .satisfies(
            finding -> {
              assertThat(finding.remedy())
                  .contains("Is " + written + ": meant? Call it " + kind + ".");
              assertThat(finding.line()).isEqualTo(line);
            });
  }

  @Test
  void doesNotTakeOneReservedNameForAnother() {
    assertThat(
            findings(
                FIELDS.replace("uuuuMMdd}", "uuuuMMdd, shapes: {short: uuMMdd}}"),
                without(NAMES, "job")))
        .extracting(finding -> finding.remedy().orElseThrow())
        .containsExactly("Add job: \"{day}\".");
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(strings = {"look", "garment", "Setup", "stup", "article_number"})
  void findsTheFieldThatIsMeantAsTheSetup(String called) {
    var finding = finding(FIELDS.replace("setup", called), NAMES.replace("setup", called));
    assertThat(finding.rule()).isEqualTo(Rule.RESERVED_NAME);
    assertThat(finding.severity()).isEqualTo(Severity.WARNING);
    assertThat(finding.where()).isEqualTo("names.frame");
    assertThat(finding.remedy())
        .contains(
            "Is the field %s meant? Call it setup and give it label: %s."
                .formatted(called, called));
  }

  @Test
  void knowsTheSetupByItsLabelOrByTheCounterThatRestartsOnIt() {
    var labelled =
        FIELDS
            .replace("setup:   {type: number", "nr: {type: number, label: Look")
            .replace(", restarts: setup", "");
    assertThat(finding(labelled, NAMES.replace("setup", "nr")).remedy())
        .contains("Is the field nr meant? Call it setup.");
    assertThat(finding(FIELDS.replace("setup", "nr"), NAMES.replace("setup", "nr")).remedy())
        .contains("Is the field nr meant? Call it setup and give it label: nr.");
  }

  @Test
  void saysThatNamesShowNoSetup() {
    var names = NAMES.replace("{time}_{setup}_{take}", "{time}_{client}_{take}");
    assertThat(
            findings(FIELDS.replace(", restarts: setup", ""), names).stream()
                .map(finding -> finding.remedy().orElseThrow()))
        .containsExactly("Show {setup} in it.");
    var none = names.replace("_{setup}", "");
    assertThat(findings(without(FIELDS, "setup").replace(", restarts: setup", ""), none))
        .singleElement()
        .satisfies(
            finding ->
                assertThat(finding.remedy().orElseThrow())
                    .startsWith("Declare it, such as setup:"));
  }

  @Test
  void findsAChoiceThatIsMeantAsTheView() {
    var finding =
        finding(
            FIELDS + "views: {type: choice, values: {F: front, B: back}}\n",
            NAMES.replace("{time}_{setup}", "{time}_{setup}[_{views}]"));
    assertThat(finding.where()).isEqualTo("fields.views");
    assertThat(finding.remedy())
        .contains("Is the field views meant? Call it view and give it label: views.");
  }

  @Test
  void findsFramesOfOneSetupThatNothingTellsApart() {
    var finding = finding(FIELDS, NAMES.replace("{time}_{setup}_{take}", "{day}_{setup}"));
    assertThat(finding.rule()).isEqualTo(Rule.SAME_NAME);
    assertThat(finding.severity()).isEqualTo(Severity.ERROR);
    assertThat(finding.message()).startsWith("two frames of one setup get the same name");
    assertThat(finding.remedy()).contains("Show {take} in it.");
    assertThat(finding.witness().orElseThrow())
        .satisfies(
            witness -> {
              assertThat(witness.first()).isEqualTo(witness.second());
              assertThat(witness.names()).containsExactly("20261125_000");
            });
  }

  @Test
  void findsSelectsOfOneSetupThatNothingTellsApart() {
    assertThat(finding(FIELDS, NAMES.replace("{client}_{setup}_{take}", "{client}_{setup}")))
        .satisfies(
            finding -> {
              assertThat(finding.where()).isEqualTo("names.select");
              assertThat(finding.message()).startsWith("two selects of one setup");
            });
  }

  @Test
  void warnsOnlyWhereTheTimeToTheSecondTellsFramesApart() {
    assertThat(finding(FIELDS, NAMES.replace("{time}_{setup}_{take}", "{time}_{setup}")))
        .satisfies(
            finding -> {
              assertThat(finding.severity()).isEqualTo(Severity.WARNING);
              assertThat(finding.message()).startsWith("two frames of the same moment");
            });
  }

  @Test
  void asksForACounterWhereNoneIsDeclared() {
    assertThat(
            findings(without(FIELDS, "take"), NAMES.replace("_{take}", "")).stream()
                .filter(finding -> finding.rule() == Rule.SAME_NAME)
                .map(finding -> finding.remedy().orElseThrow()))
        .hasSize(2)
        .allMatch(remedy -> remedy.startsWith("Declare a counter, such as take:"));
  }

  @Test
  void findsThatWhatComesBackDoesNotSayItsSelect() {
    var finding = finding(FIELDS, NAMES.replace("{select}_v", "{client}_{setup}_v"));
    assertThat(finding.severity()).isEqualTo(Severity.ERROR);
    assertThat(finding.where()).isEqualTo("names.retouched");
    assertThat(finding.message()).contains("take is not in it");
  }

  @Test
  void aFieldOfTheJobNeedNotComeBack() {
    assertThat(findings(FIELDS, NAMES.replace("{select}_v", "{setup}_{take}_v"))).isEmpty();
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(strings = {"%client%", "$client", "<client>", "(client)", "@client"})
  void findsFieldsInBracketsOfAnotherLanguage(String written) {
    assertThat(findings(FIELDS, NAMES.replace("{time}_{setup}", "{time}_" + written + "_{setup}")))
        .singleElement()
        .satisfies(
            finding -> {
              assertThat(finding.message()).contains("“" + written + "” in it is shown as it is");
              assertThat(finding.remedy()).contains("Write {client}.");
            });
  }
}
