package org.framewright.copies;

import java.util.List;
import org.framewright.base.Text;

/**
 * Why a card may not be cleared, or why nobody can tell.
 *
 * @param rule what does not hold, or was not established
 * @param said what is wrong, in a sentence without its full stop
 * @param fix what mends it
 * @param files the files that it is about, below the card; the first of them
 * @param count how many files it is about; 0 where it is about the card as a whole
 */
public record Reason(Rule rule, Text said, Text fix, List<String> files, int count) {
  /** How many of the files a reason names. */
  static final int MOST_NAMED = 20;

  public Reason {
    files = List.copyOf(files.subList(0, Math.min(MOST_NAMED, files.size())));
  }

  /** One about the card as a whole. */
  Reason(Rule rule, Text said, Text fix) {
    this(rule, said, fix, List.of(), 0);
  }

  /** One about the card as a whole. */
  Reason(Rule rule, String message, String remedy) {
    this(rule, Text.of(message), Text.of(remedy));
  }

  /** One about the card as a whole. */
  Reason(Rule rule, Text said, String remedy) {
    this(rule, said, Text.of(remedy));
  }

  Reason(Rule rule, Text said, String remedy, List<String> files) {
    this(rule, said, Text.of(remedy), files, files.size());
  }

  /** What is wrong, in English. */
  public String message() {
    return said.english();
  }

  /** What mends it, in English. */
  public String remedy() {
    return fix.english();
  }
}
