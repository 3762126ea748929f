package org.framewright.ui.board;

/** One line of the list as it is shown. */
public sealed interface Line permits Line.Heading, SetupRow {
  /** Whether the other line is the same line, perhaps with other content. */
  boolean sameAs(Line other);

  /**
   * The heading of a group.
   *
   * @param text what its setups share; empty for those that have none
   */
  record Heading(String text, int setups, int done) implements Line {
    @Override
    public boolean sameAs(Line other) {
      return other instanceof Heading heading && heading.text.equals(text);
    }
  }
}
