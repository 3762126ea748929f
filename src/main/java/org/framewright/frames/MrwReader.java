package org.framewright.frames;

import java.io.IOException;
import org.framewright.base.Text;

/**
 * MRW: blocks of name, length and data, one of which is a TIFF directory with the Exif; then rows
 * of the sensor's data. (Layout: D. Jelínek, "Minolta RAW (MRW) file format", version 1.04, and S.
 * Chauveau, "MRW File Format".)
 */
final class MrwReader {
  private static final int HEADER = 8;
  private static final int MOST_BLOCKS = 64;

  private MrwReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.startsWith("\0MRM") || file.startsWith("\0MRI");
  }

  static void read(Bytes file, Contents contents) throws IOException {
    boolean bigEndian = file.u8(3) == 'M';
    long data = HEADER + file.u32(4, bigEndian);
    var blocks = file.slice(HEADER, data - HEADER);
    long needed = 1;
    long at = 0;
    for (int i = 0; i < MOST_BLOCKS && blocks.holds(at, HEADER); i++) {
      var name = blocks.ascii(at, 4);
      var block = blocks.slice(at + HEADER, blocks.u32(at + 4, bigEndian));
      switch (name) {
        case "\0PRD" -> needed = sensorBytes(block, bigEndian);
        case "\0TTW" -> contents.exifWithPreviews(block);
        default -> {}
      }
      at += HEADER + block.size();
    }
    if (!file.holds(data, needed)) {
      contents.fault(
          Text.of(
              "its picture data reach to byte {0}, but it ends at byte {1}",
              data + needed, file.size()));
    }
    TiffReader.noteIfHollow(file, contents);
  }

  /** Rows, columns and the bits of one value, packed or not. */
  private static long sensorBytes(Bytes block, boolean bigEndian) throws IOException {
    long rows = block.u16(8, bigEndian);
    long columns = block.u16(10, bigEndian);
    return Math.max(1, rows * columns * block.u8(16) / 8);
  }
}
