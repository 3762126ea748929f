package org.framewright.report;

import org.framewright.frames.slate.SlateSymbol;

/**
 * The symbol of a slate as a drawing, with what is white around it. {@link ChartDrawer} draws it;
 * it is no chart, since nothing but pure black serves.
 */
final class SlateDrawing {
  private static final String BLACK = "#000000";

  /** By how much of a module dark ones reach over each other, so that no light falls between. */
  private static final double OVER = 0.01;

  private SlateDrawing() {}

  /** Writes it, that many millimetres wide. */
  static void write(Html html, SlateSymbol symbol, double wide, String said) {
    int side = symbol.side() + 2 * SlateSymbol.QUIET;
    var millimetres = Page.mm(wide) + "mm";
    html.open(
        "svg",
        "viewBox",
        "0 0 " + side + " " + side,
        "alt",
        said,
        "style",
        "width:" + millimetres + ";height:" + millimetres);
    // Rows and columns: each covers the seams between the others.
    for (int line = 0; line < symbol.side(); line++) {
      for (int from = 0; from < symbol.side(); from++) {
        int across = run(symbol, line, from, true);
        if (across > 0) {
          rectangle(html, from, line, across, 1);
        }
        int down = run(symbol, line, from, false);
        if (down > 1) {
          rectangle(html, line, from, 1, down);
        }
      }
    }
    html.end();
  }

  /** How many dark modules follow each other from a place on; 0 where none begin there. */
  private static int run(SlateSymbol symbol, int line, int from, boolean across) {
    if (!isDark(symbol, line, from, across) || isDark(symbol, line, from - 1, across)) {
      return 0;
    }
    int to = from;
    while (isDark(symbol, line, to, across)) {
      to++;
    }
    return to - from;
  }

  private static boolean isDark(SlateSymbol symbol, int line, int at, boolean across) {
    return across ? symbol.isDark(at, line) : symbol.isDark(line, at);
  }

  private static void rectangle(Html html, int x, int y, int width, int height) {
    html.empty(
        "rect",
        "x",
        "" + (x + SlateSymbol.QUIET - OVER),
        "y",
        "" + (y + SlateSymbol.QUIET - OVER),
        "width",
        "" + (width + 2 * OVER),
        "height",
        "" + (height + 2 * OVER),
        "fill",
        BLACK);
  }
}
