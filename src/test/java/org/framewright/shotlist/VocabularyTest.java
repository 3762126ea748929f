package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VocabularyTest {
  private static final Path DATA =
      Path.of("src/main/resources/org/framewright/shotlist/headings.properties");

  /** What lists of these languages call things: common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "Style Name, TITLE",
    "Shot type, VIEWS",
    "Type de vue, VIEWS",
    "No. of shots, FRAMES",
    "# of images, FRAMES",
    "Nb de visuels, FRAMES",
    "Artikelnummer, SETUP",
    "Look #, SETUP",
    "Look №, SETUP",
    "N° de look, SETUP",
    "Référence produit, SETUP",
    "Nr artykułu, SETUP",
    "Ujęcia, VIEWS",
    "Código de barras, SETUP",
    "Aantal foto's, FRAMES",
    "款号, SETUP",
    "商品名称, TITLE",
    "备注, NOTE",
    "品番, SETUP",
    "アングル, VIEWS",
    "撮影日, DAY",
    "Model, MODEL",
    "Item, TITLE",
    "款号/Style No., SETUP",
    "Bemerkung (intern), NOTE",
    "Preis, OTHER",
  })
  void knowsWhatListsCallThings(String heading, Heading meaning) {
    assertThat(Heading.of(heading)).isEqualTo(meaning);
  }

  @ParameterizedTest
  @CsvSource({
    "Vorderansicht, front",
    "dos, back",
    "Przód, front",
    "背面, back",
    "サイド, side",
    "Gros plan, detail",
    "F, front",
  })
  void knowsTheViewsInTheirLanguages(String word, String view) {
    assertThat(View.meaning(word)).contains(view);
    assertThat(View.meaning("three quarter")).isEqualTo(Optional.empty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Total",
        "TOTAL:",
        "Summe",
        "Gesamt: 24",
        "Sous-total",
        "Totale",
        "Razem",
        "Ogółem",
        "Totaal",
        "合计",
        "小計",
        "Total (24 looks)",
        "Subtotal = 12"
      })
  void knowsLinesOfSums(String cell) {
    assertThat(Vocabulary.WORDS.isTotal(cell)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"Total look", "Totally new", "Summer coat", "", "24", "Total: see below"})
  void takesNothingElseForASum(String cell) {
    assertThat(Vocabulary.WORDS.isTotal(cell)).isFalse();
  }

  @Test
  void theDataHaveEveryLanguageAndNoKeyTwice() throws IOException {
    var keys = new HashSet<String>();
    for (var line : Files.readAllLines(DATA, StandardCharsets.UTF_8)) {
      if (!line.startsWith("#") && line.indexOf('=') > 0) {
        assertThat(keys.add(line.substring(0, line.indexOf('=')).strip())).as(line).isTrue();
      }
    }
    for (var language : new String[] {"en", "de", "fr", "es", "it", "pl", "nl", "pt", "zh", "ja"}) {
      assertThat(keys)
          .contains(
              "setup.3." + language,
              "title.2." + language,
              "views.1." + language,
              "frames.2." + language,
              "day.1." + language,
              "note.1." + language,
              "total." + language);
    }
  }
}
