package org.framewright.frames.slate;

/**
 * Three marks that may be those of one symbol.
 *
 * @param corner above left
 * @param right above right
 * @param below below left
 * @param correlation how well what lies there is like a symbol, 1 at best
 */
record Trio(Mark corner, Mark right, Mark below, FixedModules fixed, double correlation) {
  /** How wide a module is in the picture. */
  double module() {
    return module(corner, right, below, fixed);
  }

  static double module(Mark corner, Mark right, Mark below, FixedModules fixed) {
    double area =
        (right.x() - corner.x()) * (below.y() - corner.y())
            - (right.y() - corner.y()) * (below.x() - corner.x());
    return Math.sqrt(Math.abs(area)) / fixed.betweenMarks();
  }

  /** Whether a mark lies in the square that the three span, to the edges of their symbol. */
  boolean holds(Mark mark) {
    double acrossX = right.x() - corner.x();
    double acrossY = right.y() - corner.y();
    double downX = below.x() - corner.x();
    double downY = below.y() - corner.y();
    double area = acrossX * downY - acrossY * downX;
    double x = mark.x() - corner.x();
    double y = mark.y() - corner.y();
    double u = (x * downY - y * downX) / area;
    double v = (y * acrossX - x * acrossY) / area;
    double beyond = FixedModules.TO_MARK / fixed.betweenMarks();
    return Math.min(u, v) > -beyond && Math.max(u, v) < 1 + beyond;
  }

  boolean touches(Trio other) {
    return holds(other.corner) || holds(other.right) || holds(other.below);
  }
}
