package org.framewright.naming;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the name that was probably meant. */
public final class Nearest {
  private Nearest() {}

  /** The nearest name within two edits, or a third of the word's length. */
  public static Optional<String> to(String word, Collection<String> names) {
    int limit = Math.max(2, word.length() / 3);
    if (word.isEmpty() || word.length() > 60) {
      return Optional.empty();
    }
    return names.stream()
        .filter(name -> distance(word, name) <= Math.min(limit, name.length() - 1))
        .min(Comparator.comparingInt(name -> distance(word, name)));
  }

  /** Edits from one word to the other: insert, delete, replace (Levenshtein). */
  private static int distance(String a, String b) {
    var x = a.toLowerCase(Locale.ROOT);
    var y = b.toLowerCase(Locale.ROOT);
    var row = new int[y.length() + 1];
    for (int j = 0; j <= y.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= x.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= y.length(); j++) {
        int above = row[j];
        int replaced = diagonal + (x.charAt(i - 1) == y.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(replaced, Math.min(above, row[j - 1]) + 1);
        diagonal = above;
      }
    }
    return row[y.length()];
  }
}
