package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ConventionTest {
  private static final Convention FASHION = template("fashion-days");

  static Convention template(String name) {
    try {
      return sound(Convention.read(Path.of("templates", name + ".yaml")));
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  static Convention sound(Convention.Parsed parsed) {
    return switch (parsed) {
      case Convention.Parsed.Sound(Convention convention) -> convention;
      case Convention.Parsed.Faulty(List<Finding> findings) ->
          throw new AssertionError(findings.toString());
    };
  }

  static Map<String, String> given(String... pairs) {
    var values = new LinkedHashMap<String, String>();
    for (int i = 0; i < pairs.length; i += 2) {
      values.put(pairs[i], pairs[i + 1]);
    }
    return values;
  }

  static Built.Name nameOf(Built built) {
    return switch (built) {
      case Built.Name name -> name;
      case Built.Refused(List<Finding> findings) -> throw new AssertionError(findings.toString());
    };
  }

  static List<String> refused(Built built) {
    return switch (built) {
      case Built.Name name -> throw new AssertionError("built " + name.text());
      case Built.Refused(List<Finding> findings) ->
          findings.stream().map(Finding::message).toList();
    };
  }

  private static final Map<String, String> FRAME =
      given("day", "2026-11-25", "client", "nova", "setup", "7", "view", "front", "take", "12");

  @Test
  void buildsAFramesNameFromPeoplesText() {
    var built = nameOf(FASHION.build("frame", FRAME));
    assertThat(built.text()).isEqualTo("20261125_NOVA_007_F_0012");
    assertThat(built.values())
        .containsExactly(
            Map.entry("day", "2026-11-25"),
            Map.entry("client", "NOVA"),
            Map.entry("setup", "007"),
            Map.entry("view", "F"),
            Map.entry("take", "0012"));
  }

  @Test
  void leavesAnOptionalRunOutWhenItsFieldHasNoValue() {
    var values = new LinkedHashMap<>(FRAME);
    values.remove("view");
    assertThat(nameOf(FASHION.build("frame", values)).text()).isEqualTo("20261125_NOVA_007_0012");
  }

  @Test
  void readsBackWhatItBuilt() {
    var built = nameOf(FASHION.build("frame", FRAME));
    assertThat(FASHION.read(built.text())).isEqualTo(new Reading.One("frame", built.values()));
  }

  @Test
  void reportsEachStepFromPeoplesTextToLegalText() {
    var built =
        nameOf(
            FASHION.build(
                "job",
                given(
                    "day", "2026-11-25", "client", "Åsa & Co", "title", "Frühling: Größe + Stil")));
    assertThat(built.text()).isEqualTo("2026-11-25_ASAAND_fruhling-grosse-plus");
    assertThat(built.steps())
        .extracting(Step::field, Step::became)
        .contains(
            org.assertj.core.groups.Tuple.tuple("client", "Åsa and Co"),
            org.assertj.core.groups.Tuple.tuple("client", "Asa and Co"),
            org.assertj.core.groups.Tuple.tuple("client", "ASA AND CO"),
            org.assertj.core.groups.Tuple.tuple("client", "ASAANDCO"),
            org.assertj.core.groups.Tuple.tuple("client", "ASAAND"));
  }

  @Test
  void writesOtherScriptsInLatinLetters() {
    // The transforms are CLDR's; these spellings are ICU 78.1's own.
    assertThat(
            nameOf(
                    FASHION.build(
                        "job", given("day", "2026-11-25", "client", "Москва", "title", "Αθήνα 東京")))
                .text())
        .isEqualTo("2026-11-25_MOSKVA_athena-dong-jing");
  }

  @Test
  void reportsEveryMissingAndBadValueAtOnce() {
    assertThat(refused(FASHION.build("frame", given("day", "2026-02-30", "client", "!"))))
        .hasSize(4)
        .anyMatch(message -> message.contains("no such date"))
        .anyMatch(message -> message.contains("nothing legal is left"))
        .anyMatch(message -> message.equals("Look: a value is missing"))
        .anyMatch(message -> message.equals("Frame: a value is missing"));
  }

  @Test
  void saysWhereReadingFailedAndWhatWasExpectedThere() {
    assertThat(FASHION.read("20261125_NOVA-007_F_0012", "frame"))
        .isInstanceOfSatisfying(
            Reading.None.class,
            none -> {
              assertThat(none.position()).isEqualTo(13);
              assertThat(none.expected())
                  .isEqualTo(
                      "more of the Client (2 to 6 capital letters and digits) or an underscore");
              assertThat(none.message())
                  .isEqualTo(
                      "This is no frame name: after the Client (“20261125_NOVA”) more of the Client"
                          + " (2 to 6 capital letters and digits) or an underscore was expected,"
                          + " but there is a hyphen.");
            });
    assertThat(FASHION.read("20261125_NOVA_007_F_00"))
        .isInstanceOfSatisfying(
            Reading.None.class,
            none -> {
              assertThat(none.position()).isEqualTo(22);
              assertThat(none.message()).endsWith("but the name ends.");
            });
  }

  @Test
  void extendsAKindByAnother() {
    var values = new LinkedHashMap<>(FRAME);
    values.put("version", "3");
    var built = nameOf(FASHION.build("retouched", values));
    assertThat(built.text()).isEqualTo("NOVA_007_F_0012_v03");
    assertThat(FASHION.read(built.text())).isEqualTo(new Reading.One("retouched", built.values()));
  }

  @Test
  void countsOnFromTheLargestNumberOfTheRun() {
    var numbering =
        FASHION.numbering(
            "frame",
            List.of(
                "20261125_NOVA_007_F_0012",
                "20261125_NOVA_007_0009",
                "20261126_NOVA_008_0040",
                "IMG_9999"));
    assertThat(numbering.next(given("setup", "7"))).isEqualTo(13);
    assertThat(numbering.next(given("setup", "007"))).isEqualTo(14);
    assertThat(numbering.next(given("setup", "8"))).isEqualTo(41);
    assertThat(numbering.next(given("setup", "9"))).isEqualTo(1);
  }

  @Test
  void saysWhatACounterRestartsOn() {
    var take = FASHION.fields().get("take");
    assertThat(FASHION.kinds().get("frame").counter()).contains("take");
    assertThat(take.restarts()).containsExactly("setup");
    assertThat(take.start()).isEqualTo(1);
    assertThat(take.largest()).isEqualTo(9999);
    assertThat(take.width()).isEqualTo(4);
  }
}
