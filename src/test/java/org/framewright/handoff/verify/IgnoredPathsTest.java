package org.framewright.handoff.verify;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Patterns as ASC MHL 1.0 has them: {@code .DS_Store}, {@code ascmhl/}; others from memory. */
class IgnoredPathsTest {
  @ParameterizedTest
  @CsvSource({
    ".DS_Store,.DS_Store",
    ".DS_Store,Clips/.DS_Store",
    "ascmhl/,ascmhl/0001.mhl",
    "*.tmp,a/b.tmp",
    "copied-*.sha256,copied-2026-11-27T100000Z.sha256",
    "Clips/*.mov,Clips/a.mov",
    "/Clips,Clips/a.mov",
    "a?c,x/abc/y",
    "**,anything/at/all",
  })
  void aPatternFits(String pattern, String path) {
    assertThat(IgnoredPaths.matches(pattern, path)).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    ".DS_Store,.DS_Store2",
    "*.tmp,a.tmp2",
    "/Clips,other/Clips/a.mov",
    "Clips/a,x/Clips/a",
    "a?c,ac",
    "ab,abc",
  })
  void aPatternDoesNotFit(String pattern, String path) {
    assertThat(IgnoredPaths.matches(pattern, path)).isFalse();
  }

  @Test
  void manyStarsTakeNoLongerThanThePatternTimesTheName() {
    assertThat(IgnoredPaths.matches("*a".repeat(4_000) + "b", "a".repeat(8_000))).isFalse();
  }
}
