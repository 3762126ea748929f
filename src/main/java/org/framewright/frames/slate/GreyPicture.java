package org.framewright.frames.slate;

/**
 * The grey values of a picture, row after row. The array is lent, not copied: it may be longer than
 * the picture, and the next picture may lie in it.
 */
public final class GreyPicture {
  private final byte[] values;
  private final int width;
  private final int height;

  /**
   * A picture that lies in an array.
   *
   * @param values 0 black to 255 white
   */
  public GreyPicture(byte[] values, int width, int height) {
    if (width < 1 || height < 1 || (long) width * height > values.length) {
      throw new IllegalArgumentException(
          "a picture of " + width + " by " + height + " in " + values.length + " bytes");
    }
    this.values = values;
    this.width = width;
    this.height = height;
  }

  byte[] values() {
    return values;
  }

  /** In pixels. */
  public int width() {
    return width;
  }

  /** In pixels. */
  public int height() {
    return height;
  }

  int edge() {
    return Math.max(width, height);
  }

  /** This at half the size, each pixel the mean of four, in {@code room}. */
  GreyPicture halved(byte[] room) {
    int wide = width / 2;
    int high = height / 2;
    for (int y = 0, at = 0; y < high; y++) {
      int upper = 2 * y * width;
      int lower = upper + width;
      for (int x = 0; x < 2 * wide; x += 2, at++) {
        int sum =
            (values[upper + x] & 0xFF)
                + (values[upper + x + 1] & 0xFF)
                + (values[lower + x] & 0xFF)
                + (values[lower + x + 1] & 0xFF);
        room[at] = (byte) ((sum + 2) >> 2);
      }
    }
    return new GreyPicture(room, wide, high);
  }

  /** The grey between the four pixels around a place; beyond the edge, that of the edge. */
  float at(float x, float y) {
    float inX = Math.clamp(x, 0, width - 1);
    float inY = Math.clamp(y, 0, height - 1);
    int left = Math.min((int) inX, Math.max(0, width - 2));
    int top = Math.min((int) inY, Math.max(0, height - 2));
    float across = inX - left;
    float down = inY - top;
    int at = top * width + left;
    int right = width > 1 ? 1 : 0;
    int below = height > 1 ? width : 0;
    float upper = mean(at, at + right, across);
    return upper + down * (mean(at + below, at + below + right, across) - upper);
  }

  private float mean(int one, int other, float part) {
    int from = values[one] & 0xFF;
    return from + part * ((values[other] & 0xFF) - from);
  }
}
