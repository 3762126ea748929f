package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names taken apart: dates, numbers, letters, and what stands between them. */
class NameTokensTest {
  private static String shown(NameTokens name) {
    return name.tokens().stream()
        .map(token -> token.isSeparator() ? token.text() : token.kind() + ":" + token.text())
        .collect(Collectors.joining("|"));
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {
        "20261301_20260301_1,      DIGITS:20261301|_|DATE:20260301|_|DIGITS:1",
        "2026-02-30_1,             DIGITS:2026|-|DIGITS:02|-|DIGITS:30|_|DIGITS:1",
        "18991231_1,               DIGITS:18991231|_|DIGITS:1",
        "19000101_1,               DATE:19000101|_|DIGITS:1",
        "21991231_1,               DATE:21991231|_|DIGITS:1",
        "22000101_1,               DIGITS:22000101|_|DIGITS:1",
        "01-03-2026_2026-03-02_1,  DATE:01-03-2026|_|DATE:2026-03-02|_|DIGITS:1",
        "2026-03-02_01-03-2026_1,  DATE:2026-03-02|_|DATE:01-03-2026|_|DIGITS:1",
        "120260301_1,              DIGITS:120260301|_|DIGITS:1",
        "2026-03.01_1,             DIGITS:2026|-|DIGITS:03|.|DIGITS:01|_|DIGITS:1",
        "20260301T140509_1,        DATE:20260301T140509|_|DIGITS:1",
        "20260301T1405091_1,       DATE:20260301|LETTERS:T|DIGITS:1405091|_|DIGITS:1",
        "32-13-2026_01-03-2026,    DIGITS:32|-|DIGITS:13|-|DIGITS:2026|_|DATE:01-03-2026",
      })
  void onlyDaysOfTheCalendarAreDates(String name, String tokens) {
    assertThat(shown(NameTokens.of(name))).isEqualTo(tokens);
  }

  @ParameterizedTest
  @CsvSource({
    "x.CR3,         LETTERS:x",
    "x.123,         LETTERS:x|.|DIGITS:123",
    "x.jpeg,        LETTERS:x",
    "x.jpegs,       LETTERS:x|.|LETTERS:jpegs",
    "/a/b/,         LETTERS:b",
    "a\\b\\c.jpg,   LETTERS:c",
    "__a__,         _|_|LETTERS:a|_|_",
  })
  void foldersAndEndingsAreNoPartOfAName(String name, String tokens) {
    assertThat(shown(NameTokens.of(name))).isEqualTo(tokens);
  }

  @ParameterizedTest
  @CsvSource({
    "a b_c-d_1,       false, MIXED:a b|_|MIXED:c-d|_|DIGITS:1",
    "-a b-_x,         false, -|MIXED:a b|-|_|LETTERS:x",
    "a1_b2 c3,        false, LETTERS:a|DIGITS:1|_|MIXED:b2 c3",
    "a1_b2 c3,        true,  MIXED:a1|_|MIXED:b2 c3",
    "1-2_a,           false, DIGITS:1|-|DIGITS:2|_|LETTERS:a",
    "1-2_a,           true,  MIXED:1-2|_|LETTERS:a",
    "a-1_b,           false, LETTERS:a|-|DIGITS:1|_|LETTERS:b",
    "20260301 a b_c,  false, DATE:20260301| |MIXED:a b|_|LETTERS:c",
  })
  void wordsBetweenSeparatorsAreOnePiece(String name, boolean all, String tokens) {
    assertThat(shown(NameTokens.of(name).joinedWithin('_', all))).isEqualTo(tokens);
  }
}
