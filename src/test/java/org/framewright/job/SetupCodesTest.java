package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.framewright.Templates;
import org.framewright.frames.slate.JobKey;
import org.framewright.naming.FieldType;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The product numbers are examples of GS1, from memory: 9506000134352 of the Digital Link standard,
 * 614141000012 and 95012346 of the General Specifications. Their check digits are right.
 */
class SetupCodesTest {
  private static final List<JobKey> KEYS = List.of(new JobKey("K7Q2"), new JobKey("0000"));

  private final List<Setup> setups = new ArrayList<>();

  private void setup(String code, String heading, String cell) {
    var columns = new LinkedHashMap<String, String>();
    columns.put(heading, cell);
    setups.add(new Setup(code, "", List.of(), OptionalInt.empty(), columns));
  }

  private Scanned find(String typed) {
    return SetupCodes.of(new ShotList(setups), Templates.fashionDays(), KEYS).find(typed);
  }

  private List<String> found(String typed) {
    return switch (find(typed)) {
      case Scanned.One one -> List.of(one.setup().code());
      case Scanned.Several several -> several.setups().stream().map(Setup::code).toList();
      case Scanned.Unknown _, Scanned.StraySlate _ -> List.of();
    };
  }

  @Test
  void aSetupIsFoundByItsOwnCode() {
    setup("A-012", "Note", "");
    assertThat(found("a-12")).containsExactly("A-012");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"EAN", "ean-13", "GTIN", "Barcode", "Strichcode", "Code-barres", "EAN size 38"})
  void aSetupIsFoundByAColumnWhoseHeadingSaysThatItHoldsCodes(String heading) {
    setup("001", heading, "9506000134352");
    assertThat(found("9506000134352")).containsExactly("001");
  }

  @ParameterizedTest
  @ValueSource(strings = {"SKU", "Article no.", "Artikel-Nr.", "N° article", "Style number"})
  void anArticleNumberIsFoundWhateverItsLetterCase(String heading) {
    setup("001", heading.equals("N° article") ? "Numéro d’article" : heading, "KV-1007-b");
    assertThat(found("kv-1007-B")).containsExactly("001");
  }

  /** Source of the checks: python3, hashlib. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "S1K7Q2014C75Y",
        "]Q1S1K7Q2014C75Y",
        "s1k7q2014c75y",
        "S1 K7Q2 014 C75Y",
        "S1K7Q2*MYC35FZ3SD"
      })
  void aScannedSlateOfTheJobMeansItsSetup(String typed) {
    setup("14", "Note", "");
    setup("15", "Note", "");
    setup("Ärmel 3", "Note", "");
    assertThat(found(typed)).containsExactly(typed.contains("*") ? "Ärmel 3" : "14");
  }

  @Test
  void aSlateOfAnotherJobOrWithAWrongCheckMeansNoSetup() {
    setup("1", "Note", "");
    setup("014", "Note", "");
    setup("A-012", "Note", "");
    assertThat(found("S1K7Q21TE8M")).containsExactly("1");
    assertThat(found("S10000A-012VMKJ")).containsExactly("A-012");
    assertThat(find("S1K7Q2014C75X")).isEqualTo(new Scanned.Unknown("S1K7Q2014C75X", false));
    assertThat(
            SetupCodes.of(new ShotList(setups), Templates.fashionDays(), List.of())
                .find("S1K7Q2014C75Y"))
        .isEqualTo(new Scanned.StraySlate("014", true));
  }

  @Test
  void otherColumnsHoldNoCodes() {
    setup("001", "Price", "9506000134352");
    assertThat(found("9506000134352")).isEmpty();
  }

  @Test
  void eachSizeAndColourOfACellIsACode() {
    setup("001", "EAN", "9506000134352, 614141000012");
    setup("002", "EAN", "95012346");
    assertThat(found("614141000012")).containsExactly("001");
    assertThat(found("95012346")).containsExactly("002");
  }

  @ParameterizedTest
  @CsvSource({
    "09506000134352, 9506000134352",
    "9506000134352, 09506000134352",
    "0614141000012, 614141000012",
    "00000095012346, 95012346",
  })
  void aProductNumberIsOneHoweverManyZerosStandBeforeIt(String scanned, String written) {
    setup("001", "GTIN", written);
    assertThat(found(scanned)).containsExactly("001");
  }

  @Test
  void zerosThatASpreadsheetHasLostAreNotMissed() {
    // 0012345678905 is the UPC 012345678905, an example often printed (from memory), without its
    // zeros.
    setup("001", "UPC", "12345678905");
    assertThat(found("012345678905")).containsExactly("001");
    assertThat(found("0012345678905")).containsExactly("001");
  }

  @Test
  void aNumberWhoseCheckDigitIsWrongIsNoProductNumber() {
    setup("001", "EAN", "9506000134353");
    assertThat(found("]C10109506000134353")).isEmpty();
    assertThat(found("9506000134353")).as("as it is written").containsExactly("001");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "]E09506000134352", // EAN-13, with its symbology
        "]C10109506000134352", // GS1-128
        "]d201095060001343521726123110ABC123\u001d2199", // GS1 DataMatrix: expiry, batch, serial
        "]Q3\u001d0109506000134352", // GS1 QR Code that begins with a separator
        "(01)09506000134352(10)ABC123", // as it is printed under the symbol
        "https://id.gs1.org/01/09506000134352/10/ABC123?17=261231",
        "https://example.com/shop/01/9506000134352",
        " 9506000134352\r\n",
      })
  void whatAScannerAddsToAProductNumberIsLeftOut(String typed) {
    setup("001", "EAN", "9506000134352");
    setup("002", "EAN", "95012346");
    assertThat(found(typed)).containsExactly("001");
  }

  @Test
  void twoSetupsOfOneCodeAreBothFound() {
    setup("002", "SKU", "KV-7");
    setup("001", "SKU", "KV-7");
    assertThat(found("KV-7")).containsExactly("002", "001");
  }

  @Test
  void theCodeOfOneSetupMayBeTheArticleOfAnother() {
    setup("1007", "SKU", "");
    setup("002", "SKU", "1007");
    assertThat(found("1007")).containsExactly("1007", "002");
  }

  @Test
  void whatNoSetupHasIsSaidAsItWasRead() {
    setup("001", "EAN", "9506000134352");
    assertThat(find("]C1KV-9\r")).isEqualTo(new Scanned.Unknown("KV-9", false));
    assertThat(find("")).isInstanceOf(Scanned.Unknown.class);
  }

  @Test
  void aHugeTextIsNoCode() {
    setup("001", "EAN", "9506000134352");
    assertThat(find("0".repeat(5_000_000))).isInstanceOf(Scanned.Unknown.class);
  }

  @Test
  void theColumnOfTheConventionsProductNumberHoldsCodes() {
    var convention = Templates.read(Path.of("templates/still-life-gtin.yaml"));
    var number =
        convention.fields().values().stream()
            .filter(field -> field.type() == FieldType.GTIN)
            .findFirst()
            .orElseThrow();
    setup("001", number.label(), "9506000134352");
    assertThat(SetupCodes.of(new ShotList(setups), convention, KEYS).find("9506000134352"))
        .isEqualTo(new Scanned.One(setups.getFirst()));
  }

  private Setup with(String code) {
    return SetupCodes.of(new ShotList(setups), Templates.fashionDays(), KEYS)
        .withCode(setups.getLast(), code);
  }

  private void setsFoundBy(Setup changed, String... codes) {
    setups.set(setups.size() - 1, changed);
    for (var code : codes) {
      assertThat(found(code)).as(code).containsExactly(changed.code());
    }
  }

  @Test
  void aCodeIsAddedToTheColumnOfItsKindAndNothingElseChanges() {
    setup("001", "EAN", "9506000134352");
    var changed = with("614141000012");
    assertThat(changed.columns()).containsExactly(Map.entry("EAN", "9506000134352, 614141000012"));
    assertThat(changed.code()).isEqualTo("001");
    setsFoundBy(changed, "9506000134352", "614141000012");
  }

  @Test
  void anArticleNumberIsNotAddedAmongProductNumbers() {
    setup("001", "EAN", "9506000134352");
    var changed = with("KV-9");
    assertThat(changed.columns())
        .containsExactly(Map.entry("EAN", "9506000134352"), Map.entry("Barcode", "KV-9"));
    setsFoundBy(changed, "9506000134352", "kv-9");
  }

  @Test
  void aListWithoutAColumnOfCodesGetsOne() {
    setup("001", "Note", "blue");
    var changed = with("9506000134352");
    assertThat(changed.columns())
        .containsExactly(Map.entry("Note", "blue"), Map.entry("Barcode", "9506000134352"));
    setsFoundBy(changed, "9506000134352");
  }

  @Test
  void aColumnOfAnotherSetupIsUsed() {
    setup("001", "Strichcode", "95012346");
    setup("002", "Note", "");
    assertThat(with("614141000012").columns()).containsEntry("Strichcode", "614141000012");
  }

  @Test
  void noCodeIsAddedToWhatNamesAreMadeOf() {
    var convention = Templates.read(Path.of("templates/still-life-gtin.yaml"));
    var label =
        convention.fields().values().stream()
            .filter(field -> field.type() == FieldType.GTIN)
            .findFirst()
            .orElseThrow()
            .label();
    setup("001", label, "");
    var changed =
        SetupCodes.of(new ShotList(setups), convention, KEYS)
            .withCode(setups.getFirst(), "9506000134352");
    assertThat(changed.columns())
        .containsExactly(Map.entry(label, ""), Map.entry("Barcode", "9506000134352"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"AB 12", "A,B;C", "KV/9", "x|y"})
  void aCodeIsFoundAsItWasAddedAndTheOthersStill(String code) {
    setup("001", "Barcode", "");
    setsFoundBy(with("KV 7"), "KV 7");
    setsFoundBy(with(code), "KV 7", code);
    setsFoundBy(with("9506000134352"), "KV 7", code, "9506000134352");
  }

  @Test
  void aSymbolThatNoSetupHasIsCalledByItsProductNumber() {
    setup("001", "EAN", "95012346");
    assertThat(find("]d201095060001343521726123110ABC123"))
        .isEqualTo(new Scanned.Unknown("9506000134352", true));
    assertThat(find("9506000134353")).isEqualTo(new Scanned.Unknown("9506000134353", false));
  }
}
