package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import dk.brics.automaton.BasicAutomata;
import dk.brics.automaton.BasicOperations;
import java.nio.charset.StandardCharsets;
import java.util.BitSet;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  /** UTF-8 takes two bytes from U+0080 on, three from U+0800 on, and four for a pair (RFC 3629). */
  @ParameterizedTest
  @CsvSource({
    "aaa, \u00e9\u00e9, \u00e9\u00e9, aaa",
    "aaaaa, \u00e9\u00e9, aaaaa, aaaaa",
    "a, \u0080, \u0080, ''",
    "aaa, \u07ff, aaa, aaa",
    "aa, \u0800, \u0800, aa",
    "aaaa, \u0800, aaaa, aaaa",
    "aaa, \ud83c\udf9e, \ud83c\udf9e, aaa",
    "aaaaa, \ud83c\udf9e, aaaaa, aaaaa",
  })
  void theLongestTextIsThatOfMostBytesOrOfMostUnits(
      String one, String other, String byBytes, String byUnits) {
    var texts =
        Dfa.of(
            BasicOperations.union(BasicAutomata.makeString(one), BasicAutomata.makeString(other)));
    assertThat(texts.longest(true)).isEqualTo(byBytes);
    assertThat(texts.longest(false)).hasSize(Math.max(one.length(), other.length()));
    if (!byUnits.isEmpty()) {
      assertThat(texts.longest(false)).isEqualTo(byUnits);
    }
    assertThat(texts.shortest()).hasSize(Math.min(one.length(), other.length()));
    assertThat(Dfa.weight(byBytes, true))
        .isEqualTo(byBytes.getBytes(StandardCharsets.UTF_8).length);
    assertThat(Dfa.weight(byBytes, false)).isEqualTo(byBytes.length());
  }
}
