package org.framewright.naming;

import java.util.BitSet;
import java.util.Locale;
import org.framewright.base.Text;

/** The characters that a text field may be made of. */
final class Alphabet {
  enum Letters {
    UPPER,
    LOWER,
    MIXED;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    String apply(String text) {
      return switch (this) {
        case UPPER -> text.toUpperCase(Locale.ROOT);
        case LOWER -> text.toLowerCase(Locale.ROOT);
        case MIXED -> text;
      };
    }
  }

  private static final char LAST_LATIN = '\u017E';

  private final BitSet characters = new BitSet();
  private final Letters letters;
  private final boolean accents;

  Alphabet(Letters letters, boolean digits, boolean accents, String also) {
    this.letters = letters;
    this.accents = accents;
    for (char c = 'A'; c <= 'z'; c++) {
      addLetter(c);
    }
    if (accents) {
      for (char c = '\u00C0'; c <= LAST_LATIN; c++) {
        addLetter(c);
      }
    }
    if (digits) {
      characters.set('0', '9' + 1);
    }
    also.chars().forEach(characters::set);
  }

  /**
   * Only letters whose other case is one letter and comes back, so that case never loses a name.
   */
  private void addLetter(char c) {
    if (!Character.isLetter(c)) {
      return;
    }
    var text = String.valueOf(c);
    var upper = text.toUpperCase(Locale.ROOT);
    var lower = text.toLowerCase(Locale.ROOT);
    boolean pair = upper.length() == 1 && lower.length() == 1 && !upper.equals(lower);
    boolean comesBack =
        pair
            && upper.toLowerCase(Locale.ROOT).equals(lower)
            && lower.toUpperCase(Locale.ROOT).equals(upper);
    if (comesBack
        && switch (letters) {
          case UPPER -> text.equals(upper);
          case LOWER -> text.equals(lower);
          case MIXED -> true;
        }) {
      characters.set(c);
    }
  }

  boolean has(char c) {
    return characters.get(c);
  }

  Letters letters() {
    return letters;
  }

  boolean keepsAccents() {
    return accents;
  }

  BitSet characters() {
    return (BitSet) characters.clone();
  }

  /** The characters in words, for messages. */
  Text inWords() {
    var words =
        switch (letters) {
          case UPPER -> Text.of("capital letters");
          case LOWER -> Text.of("small letters");
          case MIXED -> Text.of("letters");
        };
    return characters.get('0') ? Text.of("{0} and digits", words) : words;
  }
}
