package org.framewright.naming;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class DfaTest {
  /** java.util.regex is the reference. */
  @Test
  void wordsAreThoseOfTheRegularExpression() {
    var characters = new BitSet();
    characters.set('a', 'c' + 1);
    characters.set('x');
    var random = new Random(7);
    int accepted = 0;
    for (int shortest = 1; shortest <= 4; shortest++) {
      for (int longest = shortest; longest <= 6; longest++) {
        for (boolean separated : new boolean[] {true, false}) {
          var words =
              Dfa.words(
                  characters, separated ? Optional.of('-') : Optional.empty(), shortest, longest);
          var reference =
              Pattern.compile(
                  "(?=.{"
                      + shortest
                      + ","
                      + longest
                      + "}$)[abcx]+"
                      + (separated ? "(-[abcx]+)*" : ""));
          for (int i = 0; i < 2_000; i++) {
            var text = new StringBuilder();
            for (int n = random.nextInt(8); n > 0; n--) {
              text.append("aabbccxx---d".charAt(random.nextInt(12)));
            }
            boolean expected = reference.matcher(text).matches();
            accepted += expected ? 1 : 0;
            assertThat(words.contains(text.toString()))
                .as("%s, %d-%d", text, shortest, longest)
                .isEqualTo(expected);
          }
          assertThat(words.shortest()).hasSize(shortest);
          assertThat(words.longest(false)).hasSize(longest);
          assertThat(words.contains(words.longest(true))).isTrue();
        }
      }
    }
    assertThat(accepted).isGreaterThan(5_000);
  }

  @Test
  void twoTextsAreBothItsOwnAndDifferent() {
    var one = Dfa.of("only");
    assertThat(one.two()).containsExactly("only", null);
    var gtin = new GtinShape(8).texts();
    var two = gtin.two();
    assertThat(two[0]).isNotEqualTo(two[1]);
    assertThat(gtin.contains(two[0])).isTrue();
    assertThat(gtin.contains(two[1])).isTrue();
  }
}
