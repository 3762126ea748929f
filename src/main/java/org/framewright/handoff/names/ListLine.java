package org.framewright.handoff.names;

/**
 * A line of a list.
 *
 * @param number from 1
 * @param text as it stands there
 * @param part what of it may name frames: all of it, or the cell of a table
 */
record ListLine(int number, String text, String part, Kind kind) {
  /** What a line is for. */
  enum Kind {
    /** It may name frames. */
    ASKS(""),
    /** Nothing stands in it. */
    EMPTY(""),
    QUOTED("quoted from an earlier message"),
    MAIL_HEAD("the head of a mail"),
    SIGNATURE("a signature"),
    HEADINGS("the headings of a table"),
    NOT_CHOSEN("marked as not chosen");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }
  }
}
