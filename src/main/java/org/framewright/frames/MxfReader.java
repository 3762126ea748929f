package org.framewright.frames;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.HexFormat;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Text;

/**
 * MXF (SMPTE ST 377-1): keys of 16 bytes, each with a length and a value. The header's partition
 * says where the footer's lies; its metadata have a set for each package, with the time of its
 * making.
 */
final class MxfReader {
  private static final String KEY = "060e2b34";

  /** Of a partition's key: its first bytes, and where behind the version its kind stands. */
  private static final String PACK = "060e2b34020501";

  private static final String PARTITIONS = "0d01020101";
  private static final String SET = "060e2b34025301010d0101010101";
  private static final int MATERIAL_PACKAGE = 0x36;
  private static final int SOURCE_PACKAGE = 0x37;
  private static final int CREATED = 0x4405;

  private static final int MOST_KEYS = 4096;
  private static final int MOST_ITEMS = 512;
  private static final long LONGEST_HEADER = 16L << 20;

  private MxfReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.holds(0, 16) && isPartition(key(file, 0));
  }

  private static String key(Bytes file, long at) throws IOException {
    return HexFormat.of().formatHex(file.read(at, 16));
  }

  /** Whether a key is that of the header's, a body's or the footer's partition. */
  private static boolean isPartition(String key) {
    int kind = HexFormat.fromHexDigits(key, 26, 28);
    return key.startsWith(PACK) && key.startsWith(PARTITIONS, 16) && kind >= 2 && kind <= 4;
  }

  private record Value(long at, long length) {
    long end() {
      return at + length;
    }
  }

  static void read(Bytes file, Contents contents) throws IOException {
    var partition = value(file, 16);
    long footer = file.u64(partition.at() + 24, true);
    if (footer == 0) {
      // A body that is still filming does not know yet where the end will be.
      contents.hollow();
    } else if (!hasFooter(file, footer)) {
      contents.fault(Text.of("its end is missing"));
    }
    contents.said(metadata(file, partition));
    TiffReader.noteIfHollow(file, contents);
  }

  private static boolean hasFooter(Bytes file, long at) throws IOException {
    if (!file.holds(at, 17) || !isPartition(key(file, at))) {
      return false;
    }
    var footer = value(file, at + 16);
    return file.holds(footer.at(), footer.length());
  }

  private static Capture metadata(Bytes file, Value partition) throws IOException {
    Optional<LocalDateTime> ofSource = Optional.empty();
    long at = partition.end();
    long limit = Math.min(file.size(), at + LONGEST_HEADER);
    for (int i = 0; i < MOST_KEYS && at + 17 <= limit; i++) {
      var key = key(file, at);
      if (!key.startsWith(KEY) || (i > 0 && isPartition(key))) {
        break;
      }
      var value = value(file, at + 16);
      if (key.startsWith(SET)) {
        int kind = HexFormat.fromHexDigits(key, 28, 30);
        if (kind == MATERIAL_PACKAGE || kind == SOURCE_PACKAGE) {
          var created = created(file.slice(value.at(), value.length()));
          if (created.isPresent() && kind == MATERIAL_PACKAGE) {
            return capture(created);
          }
          ofSource = ofSource.or(() -> created);
        }
      }
      at = value.end();
    }
    return capture(ofSource);
  }

  private static Capture capture(Optional<LocalDateTime> time) {
    return new Capture(time, Optional.empty(), Optional.empty(), OptionalInt.empty());
  }

  /** The length behind a key, in one byte or with the number of its bytes before it. */
  private static Value value(Bytes file, long at) throws IOException {
    int first = file.u8(at);
    if (first < 0x80) {
      return new Value(at + 1, first);
    }
    int bytes = first & 0x7F;
    if (bytes > 8) {
      throw new Malformed(Text.of("a part at byte {0} has a length of {1} bytes", at, bytes));
    }
    long length = 0;
    for (int i = 1; i <= bytes; i++) {
      length = length << 8 | file.u8(at + i);
    }
    if (length < 0 || length > file.size()) {
      throw new Malformed(Text.of("a part at byte {0} claims more than the file holds", at));
    }
    return new Value(at + 1 + bytes, length);
  }

  /** The time that a set gives in its item of that tag: year, month, day, hour, minute, second. */
  private static Optional<LocalDateTime> created(Bytes set) throws IOException {
    long at = 0;
    for (int i = 0; i < MOST_ITEMS && set.holds(at, 4); i++) {
      int tag = set.u16(at, true);
      int length = set.u16(at + 2, true);
      if (tag == CREATED && length == 8 && set.holds(at + 4, 8)) {
        return time(set.slice(at + 4, 8));
      }
      at += 4 + length;
    }
    return Optional.empty();
  }

  private static Optional<LocalDateTime> time(Bytes stamp) throws IOException {
    try {
      return Optional.of(
          LocalDateTime.of(
              stamp.u16(0, true),
              stamp.u8(2),
              stamp.u8(3),
              stamp.u8(4),
              stamp.u8(5),
              stamp.u8(6),
              // In steps of four milliseconds.
              stamp.u8(7) * 4_000_000));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
