package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NamingCommandsTest {
  private static final String FASHION = "templates/fashion-days.yaml";

  @TempDir private Path folder;

  private Path convention(String names) throws IOException {
    return Files.writeString(
        folder.resolve("c.yaml"),
        """
        convention: Two codes
        fields: {a: {type: code}, b: {type: code}}
        names: {frame: '%s'}
        folders: {frames: f}
        """
            .formatted(names));
  }

  @Test
  void aSoundConventionPassesItsCheck() {
    var run = run("check", FASHION);
    assertThat(run.status()).isZero();
    assertThat(run.out())
        .contains("such as  20261125_NOVA_001_B_0001", "longest  ", "No fault found");
    assertThat(run.err()).isEmpty();
  }

  @Test
  void anUnsoundOneIsShownWithItsWitness() throws IOException {
    var run = run("check", convention("{a}{b}").toString(), "--json");
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.json().get("convention").asText()).isEqualTo("Two codes");
    var finding = run.json().get("findings").get(0);
    assertThat(finding.get("rule").asText()).isEqualTo("two-readings");
    assertThat(finding.get("severity").asText()).isEqualTo("error");
    assertThat(finding.get("where").asText()).isEqualTo("names.frame");
    assertThat(finding.get("line").asInt()).isEqualTo(3);
    var witness = finding.get("witness");
    for (var side : new String[] {"first", "second"}) {
      var values = witness.get(side);
      assertThat(values.get("a").asText() + values.get("b").asText())
          .isEqualTo(witness.get("names").get(0).asText());
    }
    assertThat(witness.get("first")).isNotEqualTo(witness.get("second"));
  }

  @Test
  void moreFramesThanNumbersIsAnError() {
    assertThat(run("check", FASHION, "--frames", "9999").status()).isZero();
    var run = run("check", FASHION, "--frames", "10000");
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.out()).contains("counter-full");
  }

  @Test
  void aFileThatIsNoConventionIsReportedWithItsPlaces() throws IOException {
    var run = run("check", convention("{a}_{c}").toString(), "--json");
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.json().get("findings").get(0).get("rule").asText()).isEqualTo("unknown-field");
    assertThat(run("check", folder.resolve("none.yaml").toString()).status()).isEqualTo(2);
  }

  @Test
  void buildsANameAndSaysTheStepsApart() {
    var run =
        run("name", "frame", "--by", FASHION, "day=2026-11-25", "client=Åsa", "setup=7", "take=12");
    assertThat(run.status()).isZero();
    assertThat(run.out().strip()).isEqualTo("20261125_ASA_007_0012");
    assertThat(run.err()).contains("client: Åsa -> Asa (Latin letters without accents)");
  }

  @Test
  void refusesABadValueAndAnUnknownField() {
    var bad = run("name", "frame", "--by", FASHION, "day=2026-02-30", "client=NOVA", "setup=7");
    assertThat(bad.status()).isEqualTo(2);
    assertThat(bad.out()).isEmpty();
    assertThat(bad.err()).contains("no such date", "Frame: a value is missing");
    assertThat(run("name", "frame", "--by", FASHION, "colour=red").err())
        .contains("there is no field “colour”");
    assertThat(run("name", "poster", "--by", FASHION).err()).contains("no kind of name “poster”");
  }

  @Test
  void readsANameBackWithOrWithoutItsEnding() throws IOException {
    for (var name : new String[] {"20261125_NOVA_007_F_0012", "20261125_NOVA_007_F_0012.CR3"}) {
      var run = run("read", name, "--by", FASHION, "--json");
      assertThat(run.status()).isZero();
      assertThat(run.json().get("kind").asText()).isEqualTo("frame");
      assertThat(run.json().get("fields").get("day").asText()).isEqualTo("2026-11-25");
      assertThat(run.json().get("fields").get("setup").asText()).isEqualTo("007");
    }
  }

  @Test
  void saysWhereANameFails() {
    var run = run("read", "20261125-NOVA_007_0012.jpg", "--by", FASHION, "--kind", "frame");
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines().toList())
        .containsExactly(
            "framewright: This is no frame name: after the Shoot day (“20261125”) an underscore was"
                + " expected, but there is a hyphen.",
            "  20261125-NOVA_007_0012.jpg",
            "          ^");
  }

  @Test
  void saysEveryReadingOfAnAmbiguousName() throws IOException {
    var run = run("read", "ABC", "--by", convention("{a}{b}").toString(), "--json");
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.json().get("readings")).hasSize(2);
  }

  /** ESC [ 2 J clears a terminal's screen (ECMA-48, ED). */
  @Test
  void nothingThatActsOnATerminalIsPrinted() throws IOException {
    var hostile = convention("{a}_{b}\u001B[2J");
    assertThat(run("check", hostile.toString()).out())
        .contains("U+001B cannot be in such a file")
        .doesNotContain("\u001B");
    Files.writeString(
        hostile,
        """
        convention: "Two\\u001b[2J codes"
        fields: {a: {type: code}, "b\\u001b[2J": {type: code}}
        names: {"frame\\u001b[2J": '{a}\u202E{c\u200F}'}
        folders: {frames: "f\\u001b[2J"}
        """);
    var check = run("check", hostile.toString());
    assertThat(check.status()).isEqualTo(2);
    assertThat(check.out()).doesNotContain("\u001B", "\u202E", "\u200F");
    var name = run("name", "frame", "--by", convention("{a}_{b}").toString(), "a=\u001B[2J", "x=1");
    assertThat(name.status()).isEqualTo(2);
    assertThat(name.err()).doesNotContain("\u001B");
    var read = run("read", "AB\u001B[2J", "--by", convention("{a}_{b}").toString());
    assertThat(read.status()).isEqualTo(1);
    assertThat(read.err()).contains("AB\\u{1B}[2J").contains("\n    ^").doesNotContain("\u001B");
  }

  @Test
  void aFileThatIsNoConventionIsBadInputWithARemedy() throws IOException {
    for (var file :
        new Path[] {
          folder,
          Files.writeString(folder.resolve("deep.yaml"), "[".repeat(100_000)),
          Files.write(folder.resolve("large.yaml"), new byte[300_000]),
          Files.write(folder.resolve("latin.yaml"), new byte[] {'a', (byte) 0xE9})
        }) {
      var check = run("check", file.toString());
      assertThat(check.status()).isEqualTo(2);
      assertThat(check.out()).contains("line 1, column 1").contains("Remedy: ");
      var name = run("name", "frame", "--by", file.toString());
      assertThat(name.status()).isEqualTo(2);
      assertThat(name.err().lines().count()).isLessThanOrEqualTo(2);
    }
    assertThat(run("check", folder.resolve("none.yaml").toString()).status()).isEqualTo(2);
  }
}
