package org.framewright.copies;

import java.util.List;

/**
 * Why a card may not be cleared, or why nobody can tell.
 *
 * @param rule what does not hold, or was not established
 * @param message what is wrong, in a sentence without its full stop
 * @param remedy what mends it
 * @param files the files that it is about, below the card; the first of them
 * @param count how many files it is about; 0 where it is about the card as a whole
 */
public record Reason(Rule rule, String message, String remedy, List<String> files, int count) {
  /** How many of the files a reason names. */
  static final int MOST_NAMED = 20;

  public Reason {
    files = List.copyOf(files.subList(0, Math.min(MOST_NAMED, files.size())));
  }

  /** One about the card as a whole. */
  Reason(Rule rule, String message, String remedy) {
    this(rule, message, remedy, List.of(), 0);
  }

  Reason(Rule rule, String message, String remedy, List<String> files) {
    this(rule, message, remedy, files, files.size());
  }
}
