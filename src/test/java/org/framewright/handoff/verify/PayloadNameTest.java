package org.framewright.handoff.verify;

import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** RFC 8493, section 5.2: absolute paths, {@code ..} and {@code ~} lead out of a package. */
class PayloadNameTest {

  @ParameterizedTest
  @ValueSource(strings = {"a", "a.JPG", "..a", "a..", "...", "a~", "1:x", ":", "CC:x", " "})
  void isTheNameOfAFile(String name) {
    assertThat(PayloadName.isFileName(name)).isTrue();
    assertThat(PayloadName.staysInside(name)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"a/b", "a\\b", "data/a b.JPG", "a/..b/c"})
  void leadsToSomethingBelowItsFolder(String path) {
    assertThat(PayloadName.isFileName(path)).isFalse();
    assertThat(PayloadName.staysInside(path)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        ".",
        "..",
        "a/",
        "/a",
        "a//b",
        "a/./b",
        "a/../b",
        "../a",
        "\\a",
        "a\\..\\b",
        "~",
        "~a",
        "C:",
        "C:a",
        "c:\n",
        "a\0b",
        "\0"
      })
  void leadsElsewhere(String path) {
    assertThat(PayloadName.isFileName(path)).isFalse();
    assertThat(PayloadName.staysInside(path)).isFalse();
  }
}
