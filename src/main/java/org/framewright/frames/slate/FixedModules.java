package org.framewright.frames.slate;

/**
 * The modules that are the same in every symbol of a size (ISO/IEC 18004, section 6.3): the marks
 * in three corners with what is light around them, the dotted lines between these, and in all but
 * the smallest size a small mark before the fourth corner.
 */
final class FixedModules {
  /** The sides of the symbols that slates have. */
  static final FixedModules SMALL = new FixedModules(21);

  static final FixedModules LARGE = new FixedModules(25);

  /** From the symbol's edge to the middle of a mark. */
  static final float TO_MARK = 3.5f;

  private static final int MARK = 7;
  private static final int LINE = 6;

  private final int side;

  /** 1 dark, -1 light, 0 what differs from symbol to symbol. */
  private final byte[] modules;

  private FixedModules(int side) {
    this.side = side;
    this.modules = new byte[side * side];
    for (int i = MARK; i < side - MARK; i++) {
      put(i, LINE, i % 2 == 0);
      put(LINE, i, i % 2 == 0);
    }
    mark(0, 0);
    mark(side - MARK, 0);
    mark(0, side - MARK);
    put(MARK + 1, side - MARK - 1, true);
    if (side > 21) {
      for (int y = -2; y <= 2; y++) {
        for (int x = -2; x <= 2; x++) {
          put(side - MARK + x, side - MARK + y, Math.max(Math.abs(x), Math.abs(y)) != 1);
        }
      }
    }
  }

  private void mark(int left, int top) {
    for (int y = -1; y <= MARK; y++) {
      for (int x = -1; x <= MARK; x++) {
        int out = Math.max(Math.abs(x - MARK / 2), Math.abs(y - MARK / 2));
        put(left + x, top + y, out != 2 && out != 4);
      }
    }
  }

  private void put(int x, int y, boolean dark) {
    if (x >= 0 && y >= 0 && x < side && y < side) {
      modules[y * side + x] = (byte) (dark ? 1 : -1);
    }
  }

  int side() {
    return side;
  }

  /** From the middle of one mark to that of the next. */
  float betweenMarks() {
    return side - 2 * TO_MARK;
  }

  /** 1 dark, -1 light, 0 unknown. */
  int at(int x, int y) {
    return modules[y * side + x];
  }
}
