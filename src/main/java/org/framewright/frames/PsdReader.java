package org.framewright.frames;

import java.io.IOException;
import org.framewright.base.Text;

/**
 * PSD and its large form PSB, by the published specification of the format: a head of 26 bytes,
 * then colours, resources and layers with their lengths before them, then the picture as a whole.
 */
final class PsdReader {
  private static final String MAGIC = "8BPS";
  private static final int HEAD = 26;
  private static final int MOST_CHANNELS = 56;
  private static final int LARGEST = 300_000;

  private PsdReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.startsWith(MAGIC);
  }

  static void read(Bytes file) throws IOException {
    int version = file.u16(4, true);
    int channels = file.u16(12, true);
    long height = file.u32(14, true);
    long width = file.u32(18, true);
    int depth = file.u16(22, true);
    if (version != 1 && version != 2) {
      throw new Malformed(Text.of("it is of version {0}, which is not known here", version));
    }
    boolean sensible =
        channels >= 1
            && channels <= MOST_CHANNELS
            && height >= 1
            && height <= LARGEST
            && width >= 1
            && width <= LARGEST
            && (depth == 1 || depth == 8 || depth == 16 || depth == 32);
    if (!sensible) {
      throw new Malformed(Text.of("its head describes no picture"));
    }
    boolean large = version == 2;
    long at = HEAD;
    at = behind(file, at, file.u32(at, true), 4);
    at = behind(file, at, file.u32(at, true), 4);
    at = large ? behind(file, at, u64(file, at), 8) : behind(file, at, file.u32(at, true), 4);
    picture(file, at, channels * height, (width * depth + 7) / 8, large);
  }

  /** Behind a part that has its length before it. */
  private static long behind(Bytes file, long at, long length, int sizeOfLength)
      throws IOException {
    file.slice(at + sizeOfLength, length);
    return at + sizeOfLength + length;
  }

  private static long u64(Bytes file, long at) throws IOException {
    long high = file.u32(at, true);
    if (high >= 1L << 31) {
      throw new Malformed(Text.of("a part claims more bytes than there can be"));
    }
    return high << 32 | file.u32(at + 4, true);
  }

  private static void picture(Bytes file, long at, long rows, long bytesOfRow, boolean large)
      throws IOException {
    int compression = file.u16(at, true);
    long data = at + 2;
    switch (compression) {
      case 0 -> file.slice(data, rows * bytesOfRow);
      case 1 -> {
        int size = large ? 4 : 2;
        file.slice(data, rows * size);
        long all = 0;
        for (long row = 0; row < rows; row++) {
          all += large ? file.u32(data + row * 4, true) : file.u16(data + row * 2, true);
        }
        file.slice(data + rows * size, all);
      }
      case 2, 3 -> file.slice(data, 1);
      default ->
          throw new Malformed(Text.of("its picture is packed in a way that is not known here"));
    }
  }
}
