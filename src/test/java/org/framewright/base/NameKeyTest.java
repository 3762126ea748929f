package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names that some file system takes for one have one key. */
class NameKeyTest {
  /** Pairs from Unicode's CaseFolding.txt and UnicodeData.txt (decompositions), by hand. */
  @ParameterizedTest
  @CsvSource({
    "IMG_1.JPG, img_1.jpg",
    "Å, a\u030A",
    "\u212B, å",
    "straße, STRASSE",
    "ﬁlm, FILM",
    "ΟΔΟΣ, οδος",
    "ΟΔΟΣ, οδοσ",
    "İ, i\u0307",
    "a\u200Db, ab",
    "\uFEFFx, X",
    "a\u206Ab, ab",
    "a\u202Eb, AB"
  })
  void oneKeyForNamesThatAreOneSomewhere(String one, String other) {
    assertThat(NameKey.of(one)).isEqualTo(NameKey.of(other));
  }

  @Test
  void otherNamesKeepTheirOwn() {
    assertThat(NameKey.of("a\u200Ab")).isNotEqualTo(NameKey.of("ab"));
    assertThat(NameKey.of("a\u2010b")).isNotEqualTo(NameKey.of("ab"));
    assertThat(NameKey.of("a\u2029b")).isNotEqualTo(NameKey.of("ab"));
    assertThat(NameKey.of("a\u202Fb")).isNotEqualTo(NameKey.of("ab"));
    assertThat(NameKey.of("a\u205Fb")).isNotEqualTo(NameKey.of("ab"));
    assertThat(NameKey.of("a\u2070b")).isNotEqualTo(NameKey.of("ab"));
    assertThat(NameKey.of("\u0131")).as("a dotless i is a letter of its own").isNotEmpty();
    assertThat(NameKey.of("\u007F\u0080")).isEqualTo("\u007F\u0080");
  }
}
