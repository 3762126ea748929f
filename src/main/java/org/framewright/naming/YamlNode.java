package org.framewright.naming;

import java.util.List;

/** A piece of a YAML file and where it begins; lines and columns count from 1. */
public sealed interface YamlNode {
  int line();

  int column();

  /**
   * One text.
   *
   * @param inset from the column at which it begins to that of its first character, which is one
   *     for a quoted text; -1 where its characters are not all on that line
   */
  record Text(String text, int line, int column, int inset) implements YamlNode {
    /** The column of a character of the text; where it begins, if its lines are folded. */
    int columnOf(int position) {
      return inset < 0 ? column : column + inset + position;
    }
  }

  /** A list. */
  record Sequence(List<YamlNode> items, int line, int column) implements YamlNode {}

  /** Keys and values in file order; a key may come twice. */
  record Mapping(List<Entry> entries, int line, int column) implements YamlNode {}

  /** A key and its value. */
  record Entry(Text key, YamlNode value) {}
}
