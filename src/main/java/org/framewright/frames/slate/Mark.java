package org.framewright.frames.slate;

/**
 * The middle of what looks like one of the marks in three corners of a symbol.
 *
 * @param module how wide a module seems, measured along rows and columns: up to 1.5 times too much
 *     where the symbol is turned, too little where it is tilted
 */
record Mark(double x, double y, double module) {
  double distance(Mark other) {
    return Math.hypot(x - other.x, y - other.y);
  }
}
