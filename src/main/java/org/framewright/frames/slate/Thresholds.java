package org.framewright.frames.slate;

/**
 * What counts as dark where: in each block of a picture what is nearer to the darkest than to the
 * lightest around it. Both are taken from the picture at half its size, in which noise is less.
 */
final class Thresholds {
  /** The side of a block, in pixels. */
  static final int BLOCK = 8;

  /** Where there is no dark beside light. */
  static final int FLAT = -1;

  private static final int HALF = BLOCK / 2;

  /** In steps of 255. A card in its own shadow has more, evened out noise less. */
  private static final int LEAST_CONTRAST = 20;

  private int[] darkest = {};
  private int[] lightest = {};
  private int[] levels = {};
  private int wide;
  private int high;

  /** Of a picture, by that of half its size. */
  void build(GreyPicture half) {
    wide = Math.max(1, half.width() / HALF);
    high = Math.max(1, half.height() / HALF);
    if (levels.length < wide * high) {
      darkest = new int[wide * high];
      lightest = new int[wide * high];
      levels = new int[wide * high];
    }
    for (int y = 0; y < high; y++) {
      for (int x = 0; x < wide; x++) {
        block(half, x, y);
      }
    }
    for (int y = 0; y < high; y++) {
      for (int x = 0; x < wide; x++) {
        levels[y * wide + x] = around(x, y);
      }
    }
  }

  private void block(GreyPicture half, int x, int y) {
    var values = half.values();
    int least = 255;
    int most = 0;
    int bottom = Math.min(half.height(), (y + 1) * HALF);
    int right = Math.min(half.width(), (x + 1) * HALF);
    for (int row = y * HALF; row < bottom; row++) {
      int start = row * half.width();
      for (int i = start + x * HALF; i < start + right; i++) {
        int value = values[i] & 0xFF;
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
    }
    darkest[y * wide + x] = least;
    lightest[y * wide + x] = most;
  }

  private int around(int x, int y) {
    int least = 255;
    int most = 0;
    for (int row = Math.max(0, y - 1); row <= Math.min(high - 1, y + 1); row++) {
      for (int column = Math.max(0, x - 1); column <= Math.min(wide - 1, x + 1); column++) {
        least = Math.min(least, darkest[row * wide + column]);
        most = Math.max(most, lightest[row * wide + column]);
      }
    }
    return most - least < LEAST_CONTRAST ? FLAT : (least + most + 1) / 2;
  }

  /** How many blocks lie beside each other. */
  int wide() {
    return wide;
  }

  /** Of a block; less is dark. */
  int ofBlock(int x, int y) {
    return levels[Math.min(y, high - 1) * wide + Math.min(x, wide - 1)];
  }

  /** At a pixel. */
  int at(int x, int y) {
    return ofBlock(x / BLOCK, y / BLOCK);
  }
}
