package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class LineBreaksTest {
  private static final int ALL = Integer.MAX_VALUE - 1;

  /** Every code unit is one wide: what fits is then counted, not measured. */
  private final LineBreaks breaks = new LineBreaks(String::length);

  @Test
  void breaksBetweenWords() {
    assertThat(breaks.of("a long coat of wool", 7, ALL))
        .containsExactly("a long", "coat of", "wool");
  }

  @Test
  void breaksAWordThatIsWiderThanTheRoom() {
    assertThat(breaks.of("overcoats", 4, ALL)).containsExactly("over", "coat", "s");
  }

  @Test
  void theLastLineEndsInDotsWhereTextIsLeftOver() {
    assertThat(breaks.of("a long coat of wool", 7, 2)).containsExactly("a long", "coat...");
    assertThat(breaks.of("a long coat of wool", 7, 1)).containsExactly("a lo...");
    assertThat(breaks.of("a long coat of wool", 7, 3)).last().isEqualTo("wool");
  }

  @Test
  void keepsTheLinesThatATextHas() {
    assertThat(breaks.of("one\n\ntwo", 9, ALL)).containsExactly("one", "", "two");
    assertThat(breaks.of("", 9, ALL)).isEmpty();
  }

  /** ICU finds the words of Thai, which has no spaces: the text is "long coat" and "wool". */
  @Test
  void breaksThaiBetweenItsWords() {
    assertThat(breaks.of("เสื้อโค้ทยาวผ้าวูล", 12, ALL)).containsExactly("เสื้อโค้ทยาว", "ผ้าวูล");
  }

  @Test
  void aTextOfManyPagesIsCut() {
    var lines = breaks.of("word ".repeat(100_000), 50, ALL);
    assertThat(lines).hasSizeLessThan(100).last().asString().endsWith("...");
  }

  @Property(tries = 500)
  void noLineIsWiderThanTheRoomAndNoLetterIsLost(
      @ForAll String text, @ForAll @IntRange(min = 4, max = 40) int room) {
    Assume.that(text.length() < 4_000);
    Assume.that(text.codePoints().allMatch(c -> Character.isLetter(c) || c == ' '));
    var lines = breaks.of(text, room, ALL);
    assertThat(lines)
        .allMatch(line -> line.length() <= room || line.codePointCount(0, line.length()) < 4);
    assertThat(letters(String.join("", lines))).isEqualTo(letters(text));
  }

  private static List<Integer> letters(String text) {
    return text.codePoints().filter(Character::isLetter).boxed().toList();
  }
}
