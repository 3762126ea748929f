package org.framewright.ui.board;

/**
 * How the board shares a window's width, in ems, so that enlarging everything and a smaller window
 * are one rule.
 *
 * @param sheet the list's share
 * @param leastSheet at least so wide
 * @param mostSheet at most so wide
 * @param band the words beside the picture
 * @param titleLines the lines that a title may take there
 * @param strip the height of the frames before
 */
record Widths(
    double sheet, double leastSheet, double mostSheet, double band, int titleLines, double strip) {
  private static final Widths COMPACT = new Widths(0.42, 27, 34, 12.5, 2, 4.4);
  private static final Widths MIDDLE = new Widths(0.42, 36, 48, 16, 4, 5.6);
  private static final Widths ROOMY = new Widths(0.42, 46, 70, 20, 4, 7.5);

  /**
   * Those of a window.
   *
   * @param ems its width
   */
  static Widths of(double ems) {
    return ems < 80 ? COMPACT : ems < 125 ? MIDDLE : ROOMY;
  }

  double sheetOf(double ems) {
    return Math.clamp(ems * sheet, leastSheet, mostSheet);
  }
}
