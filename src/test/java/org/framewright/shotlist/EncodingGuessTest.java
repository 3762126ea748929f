package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.Charset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Encodings that carry no mark. What is expected is the text that Java's own charsets wrote
 * (Unicode mapping tables); ICU's detector is one of the witnesses.
 */
class EncodingGuessTest {

  private static ListReading.Understood read(byte[] bytes) {
    return (ListReading.Understood) ListReader.read(bytes, "list.csv");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "windows-1252 | Artikelnummer;Bezeichnung | A1;Mäntel, weiß",
        "windows-1252 | Réf.;Désignation | A1;Chemise rayée à façon",
        "windows-1250 | Nr artykułu;Opis | A1;Płaszcz wełniany, żółty",
        "windows-1250 | SKU;Opis | A1;Płaszcz",
        "ISO-8859-2 | Nr artykułu;Nazwa | A1;Spódnica w paski, ściągacz",
        "windows-1251 | SKU;Title | A1;Пальто шерстяное",
        "GB18030 | 款号;名称 | A1;羊毛大衣",
        "GB18030 | SKU;Title | A1;羊毛大衣",
        "windows-31j | 品番;商品名 | A1;ウールコート①",
        "windows-31j | SKU;Title | A1;コート",
        "EUC-JP | 品番;商品名 | A1;シルクブラウス",
        "ISO-2022-JP | 品番;商品名 | A1;シルクブラウス",
        "Big5 | 款號;名稱 | A1;絲綢襯衫",
        "EUC-KR | SKU;Title | A1;실크 블라우스",
        "x-MacRoman | Artikelnummer;Größe | A1;Mäntel für Übergrößen",
      })
  void readsListsOfEveryCommonEncoding(String charset, String headings, String line) {
    var text = headings + "\r\n" + line + "\r\n" + line.replace("A1", "A2") + "\r\n";
    var read = read(text.getBytes(Charset.forName(charset)));
    var setup = read.list().setups().getFirst();
    var second = line.substring(3);
    assertThat(setup.title().isEmpty() ? setup.columns().firstEntry().getValue() : setup.title())
        .as(read.form().english())
        .isEqualTo(second);
  }

  @Test
  void saysThatItGuessedWhereTwoEncodingsFitAsWell() {
    var read = read("Setup,Title\n1,Cr\u00EApe\n".getBytes(Charset.forName("windows-1252")));
    assertThat(read.list().setups().getFirst().title()).isEqualTo("Cr\u00EApe");
    assertThat(read.remarks())
        .extracting(ListProblem::toString)
        .containsExactly("list.csv: its letters were taken for Windows-1252, which is a guess");
    assertThat(read.remarks().getFirst().onCommandLine().remedy()).contains("--encoding NAME");
    assertThat(read.source().encoding()).contains("windows-1252");
  }

  @Test
  void saysNothingWhereOthersWouldReadTheSame() {
    var read = read("Setup;Titel\n1;Mäntel\n".getBytes(Charset.forName("windows-1252")));
    assertThat(read.remarks()).isEmpty();
  }
}
