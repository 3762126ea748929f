package org.framewright.naming;

/**
 * One value of the file and where it stands.
 *
 * @param where its keys from the top, such as {@code fields.day.pattern}
 */
record Item(String where, YamlNode node) {
  Declared.Place place() {
    return new Declared.Place(where, node.line(), node.column());
  }

  /** The place of a character of a text. */
  Declared.Place placeOf(int position) {
    return node instanceof YamlNode.Text text
        ? new Declared.Place(where, text.line(), text.columnOf(position))
        : place();
  }
}
