package org.framewright.shotlist;

import java.util.Optional;

/**
 * How a column of a client's list was understood.
 *
 * @param position its place in the list, from 1
 * @param heading as written
 * @param taken as what it was taken
 * @param field the field of the convention's own that it fills, by its heading or by a person's
 *     choice
 */
public record Column(int position, String heading, Heading taken, Optional<String> field) {

  /** {@code "Look No." is the setup}. */
  @Override
  public String toString() {
    return "\""
        + heading
        + "\" "
        + field.map(name -> "is the field " + name).orElseGet(taken::description);
  }
}
