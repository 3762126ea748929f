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

  /**
   * This at twice the size, the pixels between being means of their neighbours, in {@code room}.
   */
  GreyPicture doubled(byte[] room) {
    int wide = 2 * width;
    for (int y = 0; y < height; y++) {
      int row = y * width;
      int below = Math.min(y + 1, height - 1) * width;
      int at = 2 * y * wide;
      for (int x = 0; x < width; x++, at += 2) {
        int right = Math.min(x + 1, width - 1);
        int here = values[row + x] & 0xFF;
        int beside = values[row + right] & 0xFF;
        int under = values[below + x] & 0xFF;
        int across = values[below + right] & 0xFF;
        room[at] = (byte) here;
        room[at + 1] = (byte) ((here + beside + 1) >> 1);
        room[at + wide] = (byte) ((here + under + 1) >> 1);
        room[at + wide + 1] = (byte) ((here + beside + under + across + 2) >> 2);
      }
    }
    return new GreyPicture(room, wide, 2 * height);
  }

  /** Makes a part of it one even grey. */
  void cover(int left, int top, int right, int bottom) {
    for (int y = Math.max(0, top); y < Math.min(height, bottom); y++) {
      for (int x = Math.max(0, left); x < Math.min(width, right); x++) {
        values[y * width + x] = (byte) 128;
      }
    }
  }
}
