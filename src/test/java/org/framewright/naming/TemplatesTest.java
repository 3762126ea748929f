package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.naming.ConventionTest.given;
import static org.framewright.naming.ConventionTest.nameOf;
import static org.framewright.naming.ConventionTest.template;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("slow")
class TemplatesTest {
  private static final Path TEMPLATES = Path.of("templates");

  static List<String> names() throws IOException {
    try (var files = Files.list(TEMPLATES)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".yaml"))
          .map(name -> name.substring(0, name.length() - 5))
          .sorted()
          .toList();
    }
  }

  private static Schema schema() throws IOException {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(Files.readString(TEMPLATES.resolve("convention.schema.json")));
  }

  @Test
  void thereAreEightOrMore() throws IOException {
    assertThat(names()).hasSizeGreaterThanOrEqualTo(8);
  }

  @ParameterizedTest
  @MethodSource("names")
  void passesItsOwnCheckWithoutErrorOrWarning(String name) {
    assertThat(template(name).check(999))
        .filteredOn(finding -> finding.severity() != Severity.NOTE)
        .isEmpty();
  }

  @ParameterizedTest
  @MethodSource("names")
  void keepsTheSchema(String name) throws IOException {
    assertThat(schema().validate(template(name).yaml(), InputFormat.YAML)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("names")
  void saysItsSources(String name) {
    assertThat(template(name).yaml()).contains("\nsources:\n  - ");
  }

  @ParameterizedTest
  @MethodSource("names")
  void hasTheFoldersAndKindsThatAJobNeeds(String name) {
    assertThat(template(name).folders()).containsKeys("frames", "selects", "retouched", "paper");
    assertThat(template(name).kinds()).containsKeys("job", "frame", "select");
    assertThat(template(name).kinds().get("frame").counter()).contains("take");
    assertThat(template(name).kinds().get("frame").fields()).containsKey("setup");
  }

  @ParameterizedTest
  @MethodSource("names")
  void readsItsOwnExamplesBack(String name) {
    var convention = template(name);
    for (var kind : convention.kinds().keySet()) {
      assertThat(convention.read(convention.exampleName(kind))).isInstanceOf(Reading.One.class);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "fields: {a: {type: dates}}",
        "fields: {a: {type: number, pattern: x}}",
        "fields: {a: {type: date}}",
        "fields: {a: {type: choice, values: []}}",
        "fields: {a: {type: gtin, digits: 11}}",
        "fields: {a: {type: words, separator: '--'}}",
        "fields: {a: {type: counter, default: 1}}",
        "fields: {a: {type: fixed}}",
        "fields: {'a b': {type: code}}",
      })
  void theSchemaRefusesWhatTheReaderRefuses(String fields) throws IOException {
    var yaml = "convention: x\n" + fields + "\nnames: {k: x}\nfolders: {frames: f}\n";
    assertThat(schema().validate(yaml, InputFormat.YAML)).isNotEmpty();
    assertThat(Convention.parse(yaml, "x")).isInstanceOf(Convention.Parsed.Faulty.class);
  }

  /** Names of the GS1 Product Image Specification's form, of the GTIN that GS1 documents. */
  @ParameterizedTest
  @ValueSource(strings = {"06291041500213_A1N1", "06291041500213_A1C1", "06291041500213_C1L1"})
  void readsNamesOfTheImageSpecification(String published) {
    assertThat(published).hasSize(19);
    assertThat(template("gs1-product-images").read(published))
        .isInstanceOfSatisfying(
            Reading.One.class, one -> assertThat(one.kind()).isEqualTo("delivery"));
  }

  /**
   * UPDIG Image Receivers Guidelines v4 and dpBestflow: the character set, and 31 with the ending.
   */
  @Test
  void keepsTheAdviceOfImageReceiversToTheLetter() {
    var convention = template("image-receivers");
    for (var kind : List.of("frame", "retouched")) {
      assertThat(convention.longestName(kind) + ".jpeg").hasSizeLessThanOrEqualTo(31);
      // NARA, 2017, as others quote it: 25 to 35 characters.
      assertThat(convention.longestName(kind) + ".jpeg").hasSizeBetween(25, 35);
      assertThat(convention.longestName(kind)).matches("[A-Za-z0-9_-]+");
    }
    assertThat(
            nameOf(
                    convention.build(
                        "frame",
                        given(
                            "day",
                            "2026-11-25",
                            "photographer",
                            "Ada Example",
                            "setup",
                            "7",
                            "take",
                            "1")))
                .text())
        .isEqualTo("20261125_exampl_07_0001");
  }
}
