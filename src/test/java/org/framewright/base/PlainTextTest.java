package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text of other people in one line of a terminal. */
class PlainTextTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Wool coat, double-breasted",
        "Kvistbjörk & Ödde",
        "معطف صوف",
        "羊毛のコート",
        "\uD83D\uDC57 dress",
        "a\u00A0b"
      })
  void leavesTextOfAnyScriptAlone(String text) {
    assertThat(PlainText.line(text)).isSameAs(text);
  }

  /** ECMA-48: ESC [ 2 J clears a screen, ESC ] 0 sets a title, U+009B is CSI in one character. */
  @Test
  void showsWhatWouldActOnATerminal() {
    assertThat(PlainText.line("a\u001B[2Jb")).isEqualTo("a\\u{1B}[2Jb");
    assertThat(PlainText.line("\u009B2J")).isEqualTo("\\u{9B}2J");
    assertThat(PlainText.line("x\u0007\u007F\u0000")).isEqualTo("x\\u{7}\\u{7F}\\u{0}");
  }

  @Test
  void keepsATextInOneLine() {
    assertThat(PlainText.line("coat\nframewright: all is well\r\u0085\u2028\u2029"))
        .isEqualTo("coat\\u{A}framewright: all is well\\u{D}\\u{85}\\u{2028}\\u{2029}");
  }

  /** Unicode Standard Annex #9, section 2: the explicit directional formatting characters. */
  @Test
  void showsWhatWouldTurnTheDirectionOfReading() {
    for (char c :
        "\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069\u200E\u200F\u061C".toCharArray()) {
      assertThat(PlainText.line("IMG" + c + "gpj.exe"))
          .isEqualTo("IMG\\u{%X}gpj.exe".formatted((int) c));
    }
    assertThat(PlainText.line("\u2027\u202F\u2065\u206A\u0300\u200D")).doesNotContain("{");
    assertThat(PlainText.line("\uFEFFa")).isEqualTo("\\u{FEFF}a");
  }

  @Test
  void showsHalvesOfPairs() {
    assertThat(PlainText.line("a\uD83D")).isEqualTo("a\\u{D83D}");
    assertThat(PlainText.line("\uDC57a")).isEqualTo("\\u{DC57}a");
    assertThat(PlainText.line("\uD83D\uD83D\uDC57")).isEqualTo("\\u{D83D}\uD83D\uDC57");
  }

  @Test
  void theStartOfATextCutsNoPairInTwo() {
    assertThat(PlainText.start("a\uD83D\uDC57b", 4)).isEqualTo("a\uD83D\uDC57b");
    assertThat(PlainText.start("a\uD83D\uDC57b", 3)).isEqualTo("a\uD83D\uDC57");
    assertThat(PlainText.start("a\uD83D\uDC57b", 2)).isEqualTo("a");
    assertThat(PlainText.start("\uD83D\uDC57b", 0)).isEmpty();
  }

  @Property
  void noControlCharacterIsLeft(@ForAll String text) {
    assertThat(PlainText.line(text).chars().boxed())
        .noneMatch(c -> Character.getType(c) == Character.CONTROL || c == 0x2028 || c == 0x2029);
  }

  @Property
  void whatIsPlainStaysAsItIs(@ForAll String text) {
    var once = PlainText.line(text);

    assertThat(PlainText.line(once)).isEqualTo(once);
  }
}
