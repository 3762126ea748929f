package org.framewright.naming;

import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;

/** A declared field. */
public interface Field {
  /** Its name in patterns. */
  String name();

  FieldType type();

  /** What to call it on a form; its name where the convention says nothing. */
  String label();

  /** The value that is used where none is given. */
  Optional<String> defaultValue();

  /** The values of a choice with what they mean, in file order; empty for every other type. */
  SequencedMap<String, String> choices();

  /** The fields on which a counter restarts; empty for one that never does, and for other types. */
  List<String> restarts();

  /** A counter's or number's smallest value; 0 for other types. */
  long start();

  /** The largest value that a counter or number has room for; 0 for other types. */
  long largest();

  /** The fewest digits that a number or counter shows; 0 for other types. */
  int width();

  /** A legal value, for forms and reports. */
  String example();
}
