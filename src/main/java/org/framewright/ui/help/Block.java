package org.framewright.ui.help;

import java.util.List;

/** A part of a page, from top to bottom. */
sealed interface Block {
  /**
   * A heading.
   *
   * @param level 1 for the page's own
   * @param anchor what links call it by
   */
  record Heading(int level, String anchor, List<Run> text) implements Block {}

  /** Sentences. */
  record Paragraph(List<Run> text) implements Block {}

  /** Lines as they are typed. */
  record Code(String text) implements Block {}

  /**
   * A list.
   *
   * @param from the number of the first; 0 where they have none
   */
  record Items(int from, List<List<Block>> items) implements Block {}

  /** What stands out: a caution. */
  record Quote(List<Block> inside) implements Block {}

  /** A table, each cell some text. */
  record Table(List<List<Run>> head, List<List<List<Run>>> rows) implements Block {}

  /**
   * A picture.
   *
   * @param file its place, relative to the page's folder
   * @param says what it shows, in words
   */
  record Picture(String file, String says) implements Block {}
}
