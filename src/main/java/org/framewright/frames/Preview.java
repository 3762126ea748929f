package org.framewright.frames;

/**
 * A small picture inside a file: a JPEG stream, or plain rows of 8-bit red, green and blue.
 *
 * @param data where it lies
 * @param rgb whether it is plain rows
 * @param width of the rows in pixels; 0 for a JPEG, which has its own
 * @param height in pixels; 0 for a JPEG
 */
record Preview(Bytes data, boolean rgb, int width, int height) {
  static Preview jpeg(Bytes data) {
    return new Preview(data, false, 0, 0);
  }
}
