package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.api.Test;

/** Orders as UAX 9 gives them; Hebrew letters stand for any right-to-left script. */
class VisualOrderTest {
  @Test
  void aLineFromLeftToRightNeedsNone() {
    assertThat(VisualOrder.matters("a coat, 2 frames")).isFalse();
    assertThat(VisualOrder.matters("a coat מעיל")).isTrue();
  }

  @Test
  void theFirstLetterGivesTheDirection() {
    assertThat(VisualOrder.fromTheRight("12 (מעיל) coat")).isTrue();
    assertThat(VisualOrder.fromTheRight("معطف")).isTrue();
    assertThat(VisualOrder.fromTheRight("coat מעיל")).isFalse();
    assertThat(VisualOrder.fromTheRight("12 ...")).isFalse();
  }

  @Test
  void theDotsOfACutTitleStandAtItsEnd() {
    assertThat(VisualOrder.pieces("מעיל...", true)).containsExactly("...", "מעיל");
    assertThat(VisualOrder.pieces("coat...", false)).containsExactly("coat...");
  }

  @Test
  void bracketsTurnRoundInARunFromTheRight() {
    assertThat(VisualOrder.pieces("מעיל (צמר)", true)).containsExactly("(", "צמר", ")", "מעיל ");
  }

  @Test
  void numbersAndLatinWordsKeepTheirOwnDirection() {
    assertThat(String.join("|", VisualOrder.pieces("מעיל KV-12 צמר", true)))
        .isEqualTo(" צמר|KV-12|מעיל ");
  }

  @Test
  void anEmptyLineHasNoPieces() {
    assertThat(VisualOrder.pieces("", true)).isEmpty();
  }
}
