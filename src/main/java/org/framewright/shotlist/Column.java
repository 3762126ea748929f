package org.framewright.shotlist;

/**
 * How a column of a client's list was understood.
 *
 * @param position its place in the list, from 1
 * @param heading as written
 * @param taken as what it was taken
 */
public record Column(int position, String heading, Heading taken) {

  /** {@code "Look No." is the setup}. */
  @Override
  public String toString() {
    return "\"" + heading + "\" " + taken.description();
  }
}
