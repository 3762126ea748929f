package org.framewright.naming;

import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * A field as the convention declares it.
 *
 * @param shapes by name; the main shape's name is empty
 */
record Declared(
    String name,
    FieldType type,
    String label,
    Optional<String> defaultValue,
    boolean required,
    SequencedMap<String, String> choices,
    List<String> restarts,
    SequencedMap<String, Shape> shapes,
    String example,
    Place place)
    implements Field {
  /** Where in the file something stands. */
  record Place(String where, int line, int column) {}

  Shape main() {
    return shapes.get("");
  }

  @Override
  public long start() {
    return main() instanceof NumberShape number ? number.smallest() : 0;
  }

  @Override
  public long largest() {
    return main() instanceof NumberShape number ? number.largest() : 0;
  }

  @Override
  public int width() {
    return main() instanceof NumberShape number ? number.width() : 0;
  }
}
