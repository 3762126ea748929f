package org.framewright.frames;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.Text;

/** The boxes of one ISO base media file (ISO/IEC 14496-12, 4.2), of which only so many are read. */
final class IsoBoxes {
  private static final int MOST = 4096;

  private final Bytes file;
  private int met;

  IsoBoxes(Bytes file) {
    this.file = file;
  }

  /**
   * A box.
   *
   * @param from where its content begins in the file
   * @param length how long that is
   */
  record Box(String type, long from, long length) {
    long end() {
      return from + length;
    }
  }

  /** The boxes of a stretch of the file, one after the other. */
  List<Box> inside(long from, long length) throws IOException {
    var found = new ArrayList<Box>();
    long at = from;
    long end = from + length;
    while (at + 8 <= end) {
      if (++met > MOST) {
        throw new Malformed(Text.of("it has more than {0} boxes", MOST));
      }
      long size = file.u32(at, true);
      int header = 8;
      if (size == 1) {
        size = file.u64(at + 8, true);
        header = 16;
      } else if (size == 0) {
        size = end - at;
      }
      if (size < header || size > end - at) {
        throw new Malformed(Text.of("a box at byte {0} does not fit", at));
      }
      found.add(new Box(file.ascii(at + 4, 4), at + header, size - header));
      at += size;
    }
    return found;
  }

  /** The same where boxes fill the stretch to its last byte. */
  List<Box> filling(long from, long length) throws IOException {
    var found = inside(from, length);
    long end = found.isEmpty() ? from : found.getLast().end();
    if (end != from + length) {
      throw new Malformed(Text.of("there is more than boxes at byte {0}", end));
    }
    return found;
  }
}
