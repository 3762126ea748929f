package org.framewright.naming;

import com.ibm.icu.text.Transliterator;
import java.text.Normalizer;
import java.util.Locale;

/** The rules that turn any script into the letters of an alphabet. */
final class LegalText {
  /**
   * CLDR's transforms by way of ICU: any script to Latin, then Latin to ASCII. They take longer to
   * make than most commands run, and most texts are ASCII.
   */
  private static final class Transforms {
    static final Transliterator TO_LATIN = Transliterator.getInstance("Any-Latin; NFC");
    static final Transliterator TO_ASCII = Transliterator.getInstance("Any-Latin; Latin-ASCII");
  }

  private LegalText() {}

  /** Signs that stand for a word become that word, where the alphabet has no room for them. */
  static String spelt(String text, Alphabet alphabet) {
    var spelt = new StringBuilder();
    boolean any = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      var word =
          alphabet.has(c)
              ? ""
              : switch (c) {
                case '&' -> "and";
                case '+' -> "plus";
                case '@' -> "at";
                case '%' -> "percent";
                default -> "";
              };
      if (word.isEmpty()) {
        spelt.append(c);
      } else {
        any = true;
        spelt.append(' ').append(word).append(' ');
      }
    }
    return any ? spelt.toString().strip().replaceAll("\\s+", " ") : text;
  }

  static String transliterated(String text, Alphabet alphabet) {
    if (text.chars().allMatch(c -> c < 0x80)) {
      return text;
    }
    var composed = Normalizer.normalize(text, Normalizer.Form.NFC);
    if (!alphabet.keepsAccents()) {
      return ascii(composed);
    }
    var kept = new StringBuilder();
    var latin = transform(Transforms.TO_LATIN, composed);
    for (int i = 0; i < latin.length(); ) {
      int c = latin.codePointAt(i);
      var one = Character.toString(c);
      var upper = one.toUpperCase(Locale.ROOT);
      var lower = one.toLowerCase(Locale.ROOT);
      boolean fits =
          one.length() == 1
              && (alphabet.has(one.charAt(0))
                  || (upper.length() == 1 && alphabet.has(upper.charAt(0)))
                  || (lower.length() == 1 && alphabet.has(lower.charAt(0))));
      kept.append(fits ? one : ascii(one));
      i += one.length();
    }
    return kept.toString();
  }

  private static String ascii(String text) {
    var bare = withoutMarks(text);
    return bare.chars().allMatch(c -> c < 0x80) ? bare : transform(Transforms.TO_ASCII, text);
  }

  /** Latin letters that are an ASCII letter with marks; for those the transforms say the same. */
  private static String withoutMarks(String text) {
    var bare = new StringBuilder();
    var apart = Normalizer.normalize(text, Normalizer.Form.NFD);
    for (int i = 0; i < apart.length(); i++) {
      char c = apart.charAt(i);
      boolean onLetter =
          i > 0 && bare.length() > 0 && Character.isLetter(bare.charAt(bare.length() - 1));
      if (!(onLetter && c >= 0x300 && c < 0x370)) {
        bare.append(c);
      }
    }
    return bare.toString();
  }

  /** ICU does not promise that one transliterator serves several threads at a time. */
  private static String transform(Transliterator transliterator, String text) {
    synchronized (LegalText.class) {
      return transliterator.transliterate(text);
    }
  }
}
