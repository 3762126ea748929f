package org.framewright.ui.board;

/**
 * How much was said of a setup.
 *
 * @param all comments
 * @param fresh those of them that nobody at this computer has seen yet
 */
record SaidCount(int all, int fresh) {
  static final SaidCount NONE = new SaidCount(0, 0);
}
