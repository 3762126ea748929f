package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import java.util.Comparator;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of two names as they come is what comparing them whole says. */
class CompareTest {
  private static final String CHARACTERS = "0001199aAbB_-é";
  private static final int PAIRS = 4_000;

  private static String text(Random random, int most) {
    var text = new StringBuilder();
    for (int i = random.nextInt(most + 1); i > 0; i--) {
      text.append(CHARACTERS.charAt(random.nextInt(CHARACTERS.length())));
    }
    return text.toString();
  }

  private static Compare start(String order) {
    return order.equals("bytes") ? Compare.bytes() : Compare.numbers();
  }

  private static int whole(String order, String first, String second) {
    Comparator<String> comparator =
        order.equals("bytes") ? Comparator.naturalOrder() : CheckOracleTest::byNumbers;
    return Integer.signum(comparator.compare(first, second));
  }

  @ParameterizedTest
  @ValueSource(strings = {"bytes", "numbers"})
  void namesInPiecesCompareAsWholeOnesDo(String order) {
    var random = new Random(7);
    for (int i = 0; i < PAIRS; i++) {
      var compare = start(order);
      var first = new StringBuilder();
      var second = new StringBuilder();
      for (int pieces = 1 + random.nextInt(5); pieces > 0; pieces--) {
        var a = text(random, 3);
        var b = random.nextInt(3) > 0 ? a : text(random, 3);
        compare = compare.feed(a, b);
        first.append(a);
        second.append(b);
        assertThat(compare.end())
            .as("%s to %s", first, second)
            .isEqualTo(whole(order, first.toString(), second.toString()));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"bytes", "numbers"})
  void whatIsDecidedStaysAsItIs(String order) {
    var random = new Random(11);
    int decided = 0;
    for (int i = 0; i < PAIRS; i++) {
      var first = text(random, 4);
      var second = text(random, 4);
      var compare = start(order).feed(first, second);
      if (compare.isDecided()) {
        decided++;
        var a = text(random, 4);
        var b = text(random, 4);
        assertThat(whole(order, first + a, second + b)).isEqualTo(compare.end());
        assertThat(compare.feed(a, b)).isEqualTo(compare);
      }
    }
    assertThat(decided).isGreaterThan(PAIRS / 4);
  }

  @ParameterizedTest
  @CsvSource({
    "bytes, a, b, true",
    "bytes, a, ab, false",
    "bytes, 2, 10, true",
    "numbers, a, B, true",
    "numbers, a, A, false",
    "numbers, 2, 10, false",
    "numbers, 2a, 10a, true",
    "numbers, 7a, 007a, false",
  })
  void aPairIsDecidedOnceNothingBehindItCanTurnIt(
      String order, String first, String second, boolean decided) {
    assertThat(start(order).feed(first, second).isDecided()).isEqualTo(decided);
  }

  @ParameterizedTest
  @CsvSource({
    "bytes, ab, ab, true",
    "bytes, ab, a, false",
    "bytes, a, ab, false",
    "numbers, 10, 12, true",
    "numbers, 010, 10, false",
    "numbers, 10, 010, false",
  })
  void namesKeepPaceWhileAsMuchIsKnownOfTheOneAsOfTheOther(
      String order, String first, String second, boolean pace) {
    assertThat(start(order).feed(first, second).keepsPace()).isEqualTo(pace);
  }

  @Test
  void namesThatAreAheadCatchUp() {
    assertThat(Compare.numbers().feed("10", "1").feed("", "0").keepsPace()).isTrue();
    assertThat(Compare.bytes().feed("ab", "a").feed("", "b").keepsPace()).isTrue();
  }

  @Test
  void equalPairsOfNamesGoOnAlike() {
    assertThat(Compare.numbers().feed("a10_", "a10_"))
        .isEqualTo(Compare.numbers().feed("b_", "b_"));
    assertThat(Compare.bytes().feed("a", "b")).isEqualTo(Compare.bytes().feed("x1", "x2"));
  }
}
