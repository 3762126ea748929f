package org.framewright.ui.command;

import java.util.List;
import java.util.Locale;

/** What is typed to find something: each word must be found. */
public record TypedWords(List<String> words) {
  public TypedWords {
    words = List.copyOf(words);
  }

  /** The words of a text, whatever their case. */
  public static TypedWords of(String typed) {
    return new TypedWords(
        List.of(typed.toLowerCase(Locale.ROOT).strip().split("\\s+")).stream()
            .filter(word -> !word.isEmpty())
            .toList());
  }

  public boolean isEmpty() {
    return words.isEmpty();
  }

  /** Whether each word is in a text. */
  public boolean areIn(String text) {
    var lower = text.toLowerCase(Locale.ROOT);
    return words.stream().allMatch(lower::contains);
  }

  /** Whether a text is called just so. */
  public boolean are(String text) {
    return words.size() == 1 && words.getFirst().equals(text.toLowerCase(Locale.ROOT));
  }
}
