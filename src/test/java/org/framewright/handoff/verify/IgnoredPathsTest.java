package org.framewright.handoff.verify;

import static org.framewright.AssertThat.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Patterns as ASC MHL 1.0 has them: {@code .DS_Store}, {@code ascmhl/}; others from memory. */
class IgnoredPathsTest {
  private static IgnoredPaths of(String pattern) {
    var ignored = new IgnoredPaths();
    ignored.add("", Set.of(pattern));
    return ignored;
  }

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
    assertThat(of(pattern).matches(path)).isTrue();
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
    assertThat(of(pattern).matches(path)).isFalse();
  }

  @Test
  void aHistoryFurtherInSpeaksOfItsOwnFolder() {
    var ignored = new IgnoredPaths();
    ignored.add("A002/", Set.of("/Clips"));
    assertThat(ignored.matches("A002/Clips/a.mov")).isTrue();
    assertThat(ignored.matches("A003/Clips/a.mov")).isFalse();
    assertThat(ignored.matches("Clips/a.mov")).isFalse();
  }

  /** One of them would take a second, and a folder has many names. */
  @Test
  void patternsThatAreMadeToTakeLongLeaveNothingOut() {
    var ignored = of("*a".repeat(4_000) + "b");
    for (int i = 0; i < 3; i++) {
      assertThat(ignored.matches("a".repeat(100_000))).isFalse();
    }
    assertThat(ignored.matches("ab")).as("the bound is reached").isFalse();
  }
}
