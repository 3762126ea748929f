package org.framewright.job;

import java.util.List;

/**
 * What a comparison of copies found, as the log keeps it.
 *
 * @param evidence the name of the file that says it of every file, in {@code .framewright/copies}
 * @param sha256 of that file
 * @param by who asked
 * @param places the folders that were compared
 * @param cards the answers
 */
public record ComparedCopies(
    String evidence,
    String sha256,
    String by,
    List<String> places,
    FramesCompared frames,
    List<Card> cards) {
  public ComparedCopies {
    places = List.copyOf(places);
    cards = List.copyOf(cards);
  }

  /**
   * The answer about one card.
   *
   * @param name what it is called before a person
   * @param answer {@code may-be-cleared}, {@code not-yet} or {@code cannot-tell}
   * @param files how many files lay on it
   * @param bytes how large they were together
   * @param digest of its state; empty where not every file could be read
   * @param on what the copies lay on, as people call it
   */
  public record Card(
      String folder,
      String name,
      String answer,
      int files,
      long bytes,
      String digest,
      List<String> on) {
    public Card {
      on = List.copyOf(on);
    }
  }
}
