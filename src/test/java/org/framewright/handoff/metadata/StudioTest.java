package org.framewright.handoff.metadata;

import static org.assertj.core.api.InstanceOfAssertFactories.type;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.naming.Gtin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The settings of the studio, and what is made of them and of a client's list. */
class StudioTest {
  @TempDir private Path folder;

  private static Problem problem(Object key, Object value) {
    return ((Studio.Reading.Faulty) Studio.of(Map.of((String) key, value), "preferences.json"))
        .problem();
  }

  private static Block block(Map<String, Object> kept, Map<String, String> columns) {
    return Block.of(Samples.studio(kept), Samples.select(columns));
  }

  @Test
  void withoutSettingsNothingIsSaidOfTheStudio() {
    assertThat(Studio.read(folder.resolve("none.json")))
        .isEqualTo(new Studio.Reading.Sound(Studio.NOTHING));
    var block = block(Map.of(), Map.of());
    assertThat(block.values())
        .doesNotContainKeys(
            Property.CREATOR, Property.RIGHTS, Property.MARKED, Property.DATA_MINING)
        .containsKeys(Property.JOB_ID, Property.TITLE);
  }

  @Test
  void theSourceIsTheStudioWhereNoOtherIsNamed() {
    assertThat(block(Map.of("studio.studio", "Nova"), Map.of()).words(Property.SOURCE))
        .containsExactly("Nova");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "studio.mail | ines at nova | it is no mail address",
        "studio.website | nova.example | it is no address that begins with https:// or http://",
        "studio.statement | ftp://nova.example/ | it is no address that begins with",
        "studio.statement | https://no va | it is no address that begins with",
        "studio.logo | logo.png | it is no whole path of a PNG or JPEG",
        "studio.logo | /logos/logo.svg | it is no whole path of a PNG or JPEG",
        "studio.copyright | © {day.year Nova | {day.year Nova does not name a field",
        "studio.copyright | © } Nova | } does not name a field",
        "studio.copyright | © {} Nova | {} does not name a field",
        "studio.mining | maybe | it is none of allowed, no-generative-training",
      })
  void aValueThatCannotBeUsedIsTold(String key, String value, String why) {
    var problem = problem(key, value);
    assertThat(problem.what()).contains("the setting " + key + " cannot be used: " + why);
    assertThat(problem.where()).isEqualTo("preferences.json");
    assertThat(problem.remedy()).contains("page of settings").contains("--metadata none");
  }

  @Test
  void whatIsNoLineOfTextIsTold() {
    assertThat(problem("studio.credit", 7).what()).contains("it is no text");
    assertThat(problem("studio.credit", "a\nb").what()).contains("line break");
    assertThat(problem("studio.credit", "a".repeat(1001)).what()).contains("more than 1000");
    assertThat(Studio.of(Map.of("studio.credit", "a".repeat(1000)), ""))
        .isInstanceOf(Studio.Reading.Sound.class);
  }

  @Test
  void settingsThatAreNoJsonAreToldAndLeftAsTheyAre() throws Exception {
    var file = Files.writeString(folder.resolve("preferences.json"), "{oops");
    assertThat(Studio.read(file))
        .asInstanceOf(type(Studio.Reading.Faulty.class))
        .satisfies(faulty -> assertThat(faulty.problem().where()).isEqualTo(file.toString()));
    assertThat(file).hasContent("{oops");
  }

  @Test
  void otherSettingsInTheFileArePassedOver() throws Exception {
    var file =
        Files.writeString(
            folder.resolve("preferences.json"),
            "{\"studio.credit\": \"Nova\", \"scale\": 1.2, \"studio.terms\": \"\"}");
    assertThat(Studio.read(file))
        .isEqualTo(new Studio.Reading.Sound(Samples.studio(Map.of("studio.credit", "Nova"))));
  }

  @Test
  void aFieldThatTheConventionDoesNotHaveIsTold() {
    var studio = Samples.studio(Map.of("studio.copyright", "© {day.year} {client} Nova"));
    assertThat(studio.problemIn(Samples.fields(), "the job").map(Problem::what))
        .hasValueSatisfying(what -> assertThat(what).contains("{client}"));
    assertThat(
            Samples.studio(Map.of("studio.copyright", "© {day} Nova"))
                .problemIn(Samples.fields(), ""))
        .isEqualTo(Optional.empty());
  }

  @Test
  void aFieldThatSaysNothingOfASelectLeavesNoGap() {
    var silent =
        new FieldWords() {
          @Override
          public boolean has(String field, String shape) {
            return true;
          }

          @Override
          public Optional<String> words(String field, String shape) {
            return field.equals("a") ? Optional.of("$1 {b}") : Optional.empty();
          }
        };
    assertThat(Notice.filled("© {x} Nova {a}", silent)).isEqualTo("© Nova $1 {b}");
  }

  // GS1 General Specifications 7.9 has 6291041500213 as its example; the others: common practice,
  // no source.
  @Test
  void aProductNumberIsCheckedAndWrittenInFourteenDigits() {
    assertThat(Gtin.of14("6291041500213")).hasValue("06291041500213");
    assertThat(Gtin.of14("4006381-333931")).hasValue("04006381333931");
    assertThat(Gtin.of14("6291041500214")).isEmpty();
    assertThat(Gtin.of14("629104150021")).isEmpty();
    assertThat(Gtin.of14("12345")).isEmpty();
    assertThat(Gtin.of14("coat")).isEmpty();
  }

  @Test
  void aWrongProductNumberIsLeftOutAndSaid() {
    var block = block(Map.of(), Map.of("GTIN", "4006381333930", "Colour", "moss"));
    assertThat(block.gtinWrong()).isTrue();
    assertThat(block.toString()).doesNotContain("4006381333930").contains("moss");
    assertThat(block(Map.of(), Samples.columns()).gtinWrong()).isFalse();
  }

  @Test
  void aListWithoutSuchColumnsSaysNothingOfThem() {
    assertThat(block(Map.of(), Map.of("Rack", "3")).values())
        .doesNotContainKeys(
            Property.PEOPLE, Property.PRODUCT, Property.RELEASE_STATUS, Property.RELEASE_ID);
  }

  @Test
  void aReleaseIsSaidOnlyInTheWordsOfTheStandard() {
    assertThat(block(Map.of(), Map.of("Model-Release", "MR-LMR")).words(Property.RELEASE_STATUS))
        .containsExactly("http://ns.useplus.org/ldf/vocab/MR-LMR");
    assertThat(block(Map.of(), Map.of("Model release", "yes, signed")).values())
        .doesNotContainKey(Property.RELEASE_STATUS);
  }

  @Test
  void theSameOriginalHasTheSameIdentityAndAnotherHasAnother() {
    var block = block(Map.of(), new LinkedHashMap<>());
    assertThat(block.of(Samples.SHA).words(Property.GUID))
        .isEqualTo(block.of(Samples.SHA).words(Property.GUID))
        .isNotEqualTo(block.of("f".repeat(64)).words(Property.GUID));
  }
}
