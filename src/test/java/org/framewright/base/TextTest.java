package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Words with values in them. */
class TextTest {
  @Test
  void valuesStandWhereTheirNumbersAre() {
    assertThat(Text.of("there is {1} in {0}", Path.of("a"), 12).english())
        .isEqualTo("there is 12 in a");
    assertThat(Text.of("{0}{0}", "x").english()).isEqualTo("xx");
  }

  @Test
  void whatIsInBracesAndNoValueIsText() {
    assertThat(Text.of("write {take} or {0}").english()).isEqualTo("write {take} or {0}");
    assertThat(Text.of("write {take} or {1}, {0}", "a").english())
        .isEqualTo("write {take} or {1}, a");
    assertThat(Text.of("{0", "a").english()).isEqualTo("{0");
  }

  @Test
  void aValueIsNeverReadAsAPattern() {
    assertThat(Text.of("{0} and {1}", "{1}", "b").english()).isEqualTo("{1} and b");
  }

  @Test
  void oneThingIsCountedInTheSingular() {
    assertThat(Text.counted("{0} file", "{0} files", 1).english()).isEqualTo("1 file");
    assertThat(Text.counted("{0} file", "{0} files", 0).english()).isEqualTo("0 files");
    assertThat(Text.counted("{0} file of {1}", "{0} files of {1}", 2, "a").english())
        .isEqualTo("2 files of a");
  }

  @Test
  void textsStandWithinTexts() {
    assertThat(Text.of("it is {0}", Text.of("a copy of {0}", "b")).english())
        .isEqualTo("it is a copy of b");
    assertThat(Text.of("").isEmpty()).isTrue();
    assertThat(Text.of("{0}", (Object) null).english()).isEqualTo("null");
  }
}
