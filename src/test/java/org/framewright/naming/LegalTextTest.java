package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import com.ibm.icu.text.Transliterator;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Against CLDR's transforms as ICU has them. */
class LegalTextTest {
  private static final Transliterator CLDR = Transliterator.getInstance("Any-Latin; Latin-ASCII");

  private static final Alphabet LETTERS = new Alphabet(Alphabet.Letters.MIXED, true, false, "");

  @Test
  void everyLetterOfTheFirstTwoPlanesBecomesWhatTheTransformsMakeOfIt() {
    var others =
        IntStream.range(0x80, 0x20000)
            .filter(c -> Character.isLetter(c) && !Character.isSurrogate((char) c))
            .filter(c -> Character.UnicodeScript.of(c) == Character.UnicodeScript.LATIN)
            .mapToObj(Character::toString)
            .flatMap(letter -> List.of(letter, "x" + letter + "y", " " + letter).stream())
            .filter(text -> !LegalText.transliterated(text, LETTERS).equals(cldr(text)));
    assertThat(others).isEmpty();
  }

  @Test
  void marksGoWhereverTheTransformsTakeThem() {
    var others = new ArrayList<String>();
    for (var before : List.of("", "a", "Z", "1", "-", "\u00DF", "\u0416", "\u304B")) {
      for (char mark = '\u0300'; mark < '\u0370'; mark++) {
        var text = before + mark + mark + "b";
        if (!LegalText.transliterated(text, LETTERS).equals(cldr(text))) {
          others.add(text);
        }
      }
    }
    assertThat(others).isEmpty();
  }

  private static String cldr(String text) {
    return CLDR.transliterate(Normalizer.normalize(text, Normalizer.Form.NFC));
  }
}
