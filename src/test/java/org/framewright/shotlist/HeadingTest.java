package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeadingTest {

  @ParameterizedTest
  @CsvSource({
    "frames wanted, frames wanted",
    "frames  wanted, frames wanted",
    "' frames wanted ', frames wanted",
    "Frames-Wanted:, frames wanted",
    "frames_wanted, frames wanted",
    "frames.wanted, frames wanted",
    "aazz0099, aazz0099",
    "{frames}, frames",
    "`frames`, frames",
    "frames/9:8, frames 9 8",
    "Größe, große",
    "Cr\u00E9pe, crepe",
    "Cre\u0301pe, crepe",
    "\uFF26\uFF32\uFF21\uFF2D\uFF25, frame",
    "set up, setup",
    "set up no, setup no",
    "Set-Up No., setup no",
    "set upper, set upper",
    "#, #",
    "' # ', #",
    "'', ''",
    "***, ''",
  })
  void comparesHeadingsWithoutCaseAccentsAndPunctuation(String heading, String plain) {
    assertThat(Heading.plain(heading)).isEqualTo(plain);
  }

  @Test
  void knowsNothingOfAHeadingWithoutLetters() {
    assertThat(Heading.of("")).isEqualTo(Heading.OTHER);
    assertThat(Heading.of("--")).isEqualTo(Heading.OTHER);
  }
}
