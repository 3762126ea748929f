package org.framewright.ui.lists;

import java.util.List;

/**
 * A column of the file.
 *
 * @param heading its own
 * @param use what it is, see {@link Use#id}
 * @param words what it is, for people
 * @param chosen whether a person said so
 * @param cells what its first lines say
 */
record ColumnLine(String heading, String use, String words, boolean chosen, List<String> cells) {
  ColumnLine {
    cells = List.copyOf(cells);
  }
}
