package org.framewright.ui.page;

import java.util.List;
import java.util.Locale;

/**
 * Finds what a page has, by part of what it is called. Made on the interface thread, of what the
 * page has then; asked in the background.
 */
@FunctionalInterface
public interface Finder {
  /** Finds nothing. */
  Finder NOTHING = (_, _) -> List.of();

  /**
   * What was found, the best first.
   *
   * @param most so many at most
   */
  List<Found> find(Words typed, int most);

  /**
   * Something that one can go to.
   *
   * @param name what it is called
   * @param more what else there is to say of it, such as its state or its key; may be empty
   * @param go goes there; called on the interface thread
   */
  record Found(String name, String more, Runnable go) {}

  /** What is typed to find something: each word must be found. */
  record Words(List<String> words) {
    public Words {
      words = List.copyOf(words);
    }

    /** The words of a text, whatever their case. */
    public static Words of(String typed) {
      return new Words(
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
}
