package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FaultsTest {
  private static List<Finding> faults(String yaml) {
    return switch (Convention.parse(yaml, "my.yaml")) {
      case Convention.Parsed.Faulty(List<Finding> findings) -> findings;
      case Convention.Parsed.Sound sound -> List.of();
    };
  }

  @Test
  void reportsEveryFaultInOnePassWithItsPlaceAndRemedy() {
    var faults =
        faults(
            """
            convention: Many faults
            fields:
              day: {type: date, pattern: uuuu-QQ}
              client: {type: code, lenght: 2-6}
              view: {type: choice}
              take: {type: counter, restarts: setpu}
              setup: {type: number, digits: 12}
            names:
              frame: "{day}_{clint}_{take"
              select: "{client}[-x]"
            folders: {selects: ../out}
            travels-to: [windos]
            """);
    assertThat(faults)
        .extracting(Finding::line, Finding::column, Finding::message)
        .contains(
            org.assertj.core.groups.Tuple.tuple(
                3, 35, "fields.day.pattern: “QQ” is not a date letter here"),
            org.assertj.core.groups.Tuple.tuple(
                4, 24, "fields.client.lenght: “lenght” has no meaning here"),
            org.assertj.core.groups.Tuple.tuple(5, 9, "fields.view: “values:” is missing"),
            org.assertj.core.groups.Tuple.tuple(
                6, 9, "fields.take: it restarts on “setpu”, which is no other field"),
            org.assertj.core.groups.Tuple.tuple(
                7, 33, "fields.setup.digits: “12” is not a number or range from 1 to 9"),
            org.assertj.core.groups.Tuple.tuple(9, 17, "names.frame: there is no field “clint”"),
            org.assertj.core.groups.Tuple.tuple(9, 25, "names.frame: this { is not closed"),
            org.assertj.core.groups.Tuple.tuple(
                10,
                20,
                "names.select: this optional run shows no field of its own, so nothing says when it"
                    + " shows"),
            org.assertj.core.groups.Tuple.tuple(
                11, 10, "folders: the folder for frames is missing"));
    assertThat(faults).allMatch(fault -> fault.remedy().isPresent());
    assertThat(faults)
        .filteredOn(fault -> fault.rule() == Rule.UNKNOWN_FIELD && fault.line() == 9)
        .extracting(fault -> fault.remedy().orElseThrow())
        .containsExactly("Is {client} meant?");
    assertThat(faults).isSortedAccordingTo((a, b) -> Integer.compare(a.line(), b.line()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{a}_{a}|shows twice",
        "{k}|go in a circle",
        "{a}]|closes nothing",
        "{a}}|closes nothing",
        "[{a}]|is optional",
        "a/b|cannot contain a /",
        "{a.x}|has no shape",
        "{a}_{b}|2 counters",
      })
  void refusesAPatternThatMeansNothing(String pattern, String what) {
    assertThat(
            faults(
                "convention: x\nfields: {a: {type: counter}, b: {type: counter}}\nnames: {k: '"
                    + pattern
                    + "'}\nfolders: {frames: f}\n"))
        .anyMatch(fault -> fault.message().contains(what) && fault.line() == 3);
  }

  @Test
  void saysWhereTextIsNotYaml() {
    assertThat(faults("convention: x\nfields: {a: {type: code}\nnames: y\n"))
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.message()).startsWith("convention: this { is not closed");
              assertThat(fault.line()).isEqualTo(2);
            });
    assertThat(faults("")).singleElement().extracting(Finding::line).isEqualTo(1);
    assertThat(faults("- a\n- b")).hasSize(1);
    assertThat(faults("a: 1\nb: *x\n")).singleElement().extracting(Finding::line).isEqualTo(2);
    assertThat(faults("[".repeat(10_000))).hasSize(1);
    assertThat(faults("a".repeat(2_000_000))).hasSize(1);
  }

  @Test
  void suggestsTheNearestWord() {
    assertThat(Nearest.to("clinet", List.of("client", "title"))).contains("client");
    assertThat(Nearest.to("zzzzzz", List.of("client", "title"))).isEmpty();
  }
}
