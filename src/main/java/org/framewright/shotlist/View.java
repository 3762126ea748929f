package org.framewright.shotlist;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A wanted angle of a setup.
 *
 * @param code as the list gives it, such as {@code F} or {@code front}; never blank
 * @param frames how many frames are wanted of it, at least 1; empty when the list does not say
 */
public record View(String code, OptionalInt frames) {
  public View {
    if (code.isBlank()) {
      throw new IllegalArgumentException("a view without a code");
    }
  }

  /** A wanted view of which the list gives no number of frames. */
  public View(String code) {
    this(code, OptionalInt.empty());
  }

  /**
   * The views that a text names as a list's cell does, in its order: {@code F:8, B:4} or {@code F
   * B}. One may be named twice.
   */
  public static List<View> listOf(String text) {
    return ViewsText.read(text);
  }

  /** The code of a view that is named twice; empty if none is. */
  public static Optional<String> namedTwice(List<View> views) {
    var there = new HashSet<String>();
    return views.stream().map(View::code).filter(code -> !there.add(code)).findFirst();
  }

  /** What a word for a view means, in English: {@code front} for {@code Vorderansicht}. */
  public static Optional<String> meaning(String word) {
    return Vocabulary.WORDS.view(word);
  }

  /** As a list's cell shows it: {@code F} or {@code F:8}. */
  @Override
  public String toString() {
    return frames.isPresent() ? code + ":" + frames.getAsInt() : code;
  }
}
