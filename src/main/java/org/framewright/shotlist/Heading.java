package org.framewright.shotlist;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** As what a column of a list is taken, by its heading. */
public enum Heading {
  SETUP("is the setup"),
  TITLE("is the title"),
  VIEWS("holds the views wanted"),
  VIEW("is a view wanted"),
  FRAMES("is the number of frames wanted"),
  DAY("is the day"),
  RACK("is the rack"),
  MODEL("is the model"),
  NOTE("is the note"),
  /** Written by this program's own export; the job knows it better. */
  FROM_JOB("comes from the job, left out"),
  OTHER("is kept as it is"),
  /** A person says that it is kept as it is, whatever its heading means. */
  KEPT("is kept as it is"),
  /** A person says so. */
  UNUSED("is not used");

  /** What any number of columns may be chosen to be, by the words for it. */
  private static final Map<String, Heading> USES =
      Map.of("kept", KEPT, "unused", UNUSED, "one-view", VIEW);

  private final String description;

  Heading(String description) {
    this.description = description;
  }

  /** {@code is the setup}. */
  public String description() {
    return description;
  }

  /** The word for it in options and documents, such as {@code setup}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The one that a person may name by its word, for a column to be taken as. */
  public static Optional<Heading> ofWord(String word) {
    return Arrays.stream(values())
        .filter(heading -> heading.isChosen() && heading.word().equalsIgnoreCase(word.strip()))
        .findFirst();
  }

  /** Whether one column may be chosen to be it. */
  public boolean isChosen() {
    return switch (this) {
      case SETUP, TITLE, VIEWS, FRAMES, DAY, RACK, MODEL, NOTE -> true;
      case VIEW, FROM_JOB, OTHER, KEPT, UNUSED -> false;
    };
  }

  /** What any number of columns may be chosen to be: kept, unused, or one-view. */
  public static Optional<Heading> ofUse(String word) {
    return Optional.ofNullable(USES.get(word.strip().toLowerCase(Locale.ROOT)));
  }

  /** The word by which any number of columns may be chosen to be it; empty if they may not. */
  public Optional<String> use() {
    return USES.entrySet().stream()
        .filter(use -> use.getValue() == this)
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** Whether two headings are one and the same to a person who names a column by it. */
  static boolean isSame(String one, String two) {
    var plain = plain(one);
    return plain.isEmpty() ? one.strip().equals(two.strip()) : plain.equals(plain(two));
  }

  /** The one that the data of the vocabulary call so. */
  static Heading ofKey(String key) {
    return key.equals("job") ? FROM_JOB : valueOf(key.toUpperCase(Locale.ROOT));
  }

  /** As what a heading is taken on its own, whatever its case, accents and punctuation. */
  public static Heading of(String heading) {
    return meanings(heading).entrySet().stream()
        .min(Map.Entry.<Heading, Integer>comparingByValue().thenComparing(Map.Entry::getKey))
        .map(Map.Entry::getKey)
        .orElse(OTHER);
  }

  /** All that a heading may mean, and how surely, the smaller the surer. */
  static Map<Heading, Integer> meanings(String heading) {
    return Vocabulary.WORDS.meanings(heading);
  }

  /** Lower case, without accents; runs of anything but letters and digits are one space. */
  static String plain(String heading) {
    return Vocabulary.plain(heading);
  }
}
