package org.framewright.frames.slate;

/**
 * Finds what looks like the marks in the corners of a symbol: along any line through its middle one
 * is dark, light, dark, light and dark for 1, 1, 3, 1 and 1 modules (ISO/IEC 18004, section 6.3.3).
 * Edges lie between pixels, where the grey passes the threshold, so that modules of less than two
 * pixels are told.
 */
final class MarkFinder {
  /** Two runs together, one dark and one light, may be off by so much of a module. */
  private static final double TOLERANCE = 0.8;

  private static final double NARROWEST = 0.25;
  private static final double MOST_SLANTED = 2.5;
  private static final int EDGES = 6;

  private final double[] edges = new double[EDGES];
  private GreyPicture picture;
  private Thresholds thresholds;
  private byte[] values;

  /** Looks along every so manyth row of one level of a picture. */
  void find(Pyramid pyramid, int level, Thresholds dark, int step, Marks into) {
    picture = pyramid.level(level);
    values = picture.values();
    thresholds = dark;
    for (int y = step / 2; y < picture.height(); y += step) {
      row(y, level, into);
    }
  }

  private void row(int y, int level, Marks into) {
    int start = y * picture.width();
    int blockRow = y / Thresholds.BLOCK;
    int blocks = thresholds.wide();
    boolean dark = false;
    int before = values[start] & 0xFF;
    double e0 = 0;
    double e1 = 0;
    double e2 = 0;
    double e3 = 0;
    double e4 = 0;
    double e5 = 0;
    for (int block = 0; block < blocks; block++) {
      int limit = thresholds.ofBlock(block, blockRow);
      int from = block * Thresholds.BLOCK;
      int to = block == blocks - 1 ? picture.width() : from + Thresholds.BLOCK;
      if (limit == Thresholds.FLAT) {
        before = values[start + to - 1] & 0xFF;
        continue;
      }
      for (int x = from; x < to; x++) {
        int value = values[start + x] & 0xFF;
        if (value < limit != dark) {
          dark = !dark;
          e0 = e1;
          e1 = e2;
          e2 = e3;
          e3 = e4;
          e4 = e5;
          e5 = edge(x - 1, before, value, limit);
          if (!dark && fits(e0, e1, e2, e3, e4, e5)) {
            check((e2 + e3) / 2, y, module(e0, e1, e4, e5), level, into);
          }
        }
        before = value;
      }
    }
  }

  /** Where between a pixel and the next the grey passes the threshold. */
  private static double edge(int pixel, int before, int value, int limit) {
    return before == value
        ? pixel + 1
        : pixel + Math.clamp((double) (limit - before) / (value - before), 0, 1);
  }

  /** From dark to dark and from light to light, so that it does not matter which seems wider. */
  private static double module(double e0, double e1, double e4, double e5) {
    return (e4 - e0 + e5 - e1) / 12;
  }

  private static boolean fits(double e0, double e1, double e2, double e3, double e4, double e5) {
    double module = module(e0, e1, e4, e5);
    double off = TOLERANCE * module;
    double least = NARROWEST * module;
    return Math.abs(e2 - e0 - 2 * module) < off
        && Math.abs(e5 - e3 - 2 * module) < off
        && Math.abs(e3 - e1 - 4 * module) < 1.5 * off
        && Math.abs(e4 - e2 - 4 * module) < 1.5 * off
        && e1 - e0 > least
        && e2 - e1 > least
        && e4 - e3 > least
        && e5 - e4 > least
        && e3 - e2 > module;
  }

  /** Also down the column, and then along the row through the middle of that. */
  private void check(double x, int y, double module, int level, Marks into) {
    if (!measure((int) Math.round(x), y, 0, 1, module * MOST_SLANTED)) {
      return;
    }
    double middleY = middle();
    double high = module(edges[0], edges[1], edges[4], edges[5]);
    if (!measure((int) Math.round(x), (int) Math.round(middleY), 1, 0, module * MOST_SLANTED)) {
      return;
    }
    double middleX = middle();
    double wide = module(edges[0], edges[1], edges[4], edges[5]);
    if (wide < high * MOST_SLANTED && high < wide * MOST_SLANTED) {
      into.add(
          Pyramid.whole(level, middleX),
          Pyramid.whole(level, middleY),
          Math.sqrt(wide * high) * (1 << level));
    }
  }

  private double middle() {
    return (edges[0] + edges[1] + edges[2] + edges[3] + edges[4] + edges[5]) / EDGES;
  }

  /** Fills in the edges along a line through a place, as places on that line; false if unfit. */
  private boolean measure(int x, int y, int dx, int dy, double module) {
    return isDark(x, y)
        && side(x, y, dx, dy, module, 3, 1)
        && side(x, y, -dx, -dy, module, 2, -1)
        && fits(edges[0], edges[1], edges[2], edges[3], edges[4], edges[5]);
  }

  private boolean side(int fromX, int fromY, int dx, int dy, double module, int first, int step) {
    int most = (int) (5 * module) + 3;
    int x = fromX;
    int y = fromY;
    boolean dark = true;
    int before = values[y * picture.width() + x] & 0xFF;
    int edge = first;
    for (int i = 0; i < most; i++) {
      x += dx;
      y += dy;
      if (x < 0 || y < 0 || x >= picture.width() || y >= picture.height()) {
        return false;
      }
      int limit = thresholds.at(x, y);
      int value = values[y * picture.width() + x] & 0xFF;
      if (limit != Thresholds.FLAT && value < limit != dark) {
        dark = !dark;
        double past = edge(i, before, value, limit);
        edges[edge] = (dx == 0 ? fromY : fromX) + step * past;
        edge += step;
        if (edge < 0 || edge == EDGES) {
          return true;
        }
      }
      before = value;
    }
    return false;
  }

  private boolean isDark(int x, int y) {
    if (x < 0 || y < 0 || x >= picture.width() || y >= picture.height()) {
      return false;
    }
    int limit = thresholds.at(x, y);
    return limit != Thresholds.FLAT && (values[y * picture.width() + x] & 0xFF) < limit;
  }
}
