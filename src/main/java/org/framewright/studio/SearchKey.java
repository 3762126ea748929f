package org.framewright.studio;

import java.text.Normalizer;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;

/** What a text is found by: its words without case, accents and signs. */
final class SearchKey {
  /** The longest word, in letters. */
  static final int LONGEST = 64;

  private static final int GTIN = 8;
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{Nd}]+");
  private static final Pattern BETWEEN_NUMBERS =
      Pattern.compile("(?<=[0-9])[^\\p{L}\\p{Nd}]+(?=[0-9])");
  private static final Pattern OTHER_SIGNS =
      Pattern.compile("[^\\p{L}\\p{Nd}-]+|(?<![0-9])-|-(?![0-9])");
  private static final Pattern DIGITS = Pattern.compile("[0-9]+");

  private SearchKey() {}

  /** The words of a text, each once, in order; letters and digits only. */
  static List<String> words(String text) {
    var words = new LinkedHashSet<String>();
    var found = WORD.matcher(plain(text));
    while (found.find()) {
      words.add(gtin(PlainText.start(found.group(), LONGEST)));
    }
    return List.copyOf(words);
  }

  /** Letters and digits of a text, without what is between them; a dash parts two numbers. */
  static String joined(String text) {
    var numbersApart = BETWEEN_NUMBERS.matcher(plain(text)).replaceAll("-");
    return OTHER_SIGNS.matcher(numbersApart).replaceAll("");
  }

  static boolean isNumber(String word) {
    return DIGITS.matcher(word).matches();
  }

  private static String plain(String text) {
    var apart = Normalizer.normalize(text, Normalizer.Form.NFKD);
    var lower = MARKS.matcher(apart).replaceAll("").toLowerCase(Locale.ROOT);
    var plain = new StringBuilder(lower.length());
    lower
        .codePoints()
        .forEach(
            letter -> {
              switch (letter) {
                case 'ß' -> plain.append("ss");
                case 'æ' -> plain.append("ae");
                case 'œ' -> plain.append("oe");
                case 'ø' -> plain.append('o');
                case 'ł' -> plain.append('l');
                case 'đ', 'ð' -> plain.append('d');
                case 'þ' -> plain.append("th");
                case 'ı' -> plain.append('i');
                default -> plain.appendCodePoint(digit(letter));
              }
            });
    // A small letter may come apart anew, as the dotted capital I does.
    return MARKS.matcher(plain).replaceAll("");
  }

  private static int digit(int letter) {
    return Character.getType(letter) == Character.DECIMAL_DIGIT_NUMBER
        ? '0' + Character.digit(letter, 10)
        : letter;
  }

  /** A GTIN is one with as many zeros before it as anybody writes. */
  private static String gtin(String word) {
    if (word.length() < GTIN || !isNumber(word)) {
      return word;
    }
    int first = 0;
    while (first < word.length() - 1 && word.charAt(first) == '0') {
      first++;
    }
    return word.substring(first);
  }
}
