package org.framewright.frames;

import java.io.IOException;
import org.framewright.base.Text;

/**
 * BigTIFF, the form of TIFF for files of 4 GB and more, by its published design (Aware Systems,
 * "The BigTIFF File Format Proposal"; libtiff reads and writes it): as TIFF, with offsets and
 * counts of eight bytes. Asked of it: do the data of its pictures lie inside the file, and what it
 * says of them.
 */
final class BigTiffReader {
  private static final int MAGIC = 43;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int LONG8 = 16;
  private static final int FIELD = 20;
  private static final int MOST_DIRECTORIES = 64;
  private static final int MOST_FIELDS = 4096;
  private static final int MOST_PARTS = 1 << 20;

  private final Bytes file;
  private final boolean bigEndian;

  /** The numbers of a field: where they lie, and how wide each is. */
  private record Numbers(long at, long count, int width) {
    static final Numbers NONE = new Numbers(0, 0, 0);
  }

  private BigTiffReader(Bytes file) throws IOException {
    this.file = file;
    this.bigEndian = file.u8(0) == 'M';
  }

  static boolean claims(Bytes file) throws IOException {
    if (!file.holds(0, 16)) {
      return false;
    }
    int order = file.u16(0, true);
    return (order == 0x4949 || order == 0x4D4D) && file.u16(2, order == 0x4D4D) == MAGIC;
  }

  static void read(Bytes file) throws IOException {
    var reader = new BigTiffReader(file);
    if (file.u16(4, reader.bigEndian) != 8 || file.u16(6, reader.bigEndian) != 0) {
      throw new Malformed(Text.of("its head describes no picture"));
    }
    long parts = 0;
    long at = file.u64(8, reader.bigEndian);
    for (int i = 0; i < MOST_DIRECTORIES && at != 0; i++) {
      long fields = file.u64(at, reader.bigEndian);
      if (fields > MOST_FIELDS) {
        throw new Malformed(Text.of("a directory has more fields than is sensible"));
      }
      parts += reader.check(at + 8, fields, TiffReader.STRIP_OFFSETS, TiffReader.STRIP_COUNTS);
      parts += reader.check(at + 8, fields, TiffReader.TILE_OFFSETS, TiffReader.TILE_COUNTS);
      reader.requireInside(at + 8, fields);
      at = file.u64(at + 8 + fields * FIELD, reader.bigEndian);
    }
    if (parts == 0) {
      throw new Malformed(Text.of("it names no picture data"));
    }
  }

  /** Checks the parts of a directory's picture; says how many there are. */
  private long check(long directory, long fields, int offsets, int counts) throws IOException {
    var where = numbers(directory, fields, offsets);
    var lengths = numbers(directory, fields, counts);
    if (where.count() != lengths.count() || where.count() > MOST_PARTS) {
      throw new Malformed(Text.of("the parts of its picture cannot be counted"));
    }
    for (long i = 0; i < where.count(); i++) {
      file.slice(number(where, i), number(lengths, i));
    }
    return where.count();
  }

  /** What is said of a picture must lie inside, too: a profile often comes last. */
  private void requireInside(long directory, long fields) throws IOException {
    for (long at = directory; at < directory + fields * FIELD; at += FIELD) {
      int type = file.u16(at + 2, bigEndian);
      long count = file.u64(at + 4, bigEndian);
      if (TiffFields.values(file, 0, type, count).size() > 8) {
        TiffFields.values(file, file.u64(at + 12, bigEndian), type, count);
      }
    }
  }

  private Numbers numbers(long directory, long fields, int tag) throws IOException {
    for (long at = directory; at < directory + fields * FIELD; at += FIELD) {
      if (file.u16(at, bigEndian) != tag) {
        continue;
      }
      int width =
          switch (file.u16(at + 2, bigEndian)) {
            case SHORT -> 2;
            case LONG -> 4;
            case LONG8 -> 8;
            default -> throw new Malformed(Text.of("a field of its picture has no numbers"));
          };
      long count = file.u64(at + 4, bigEndian);
      return new Numbers(count <= 8 / width ? at + 12 : file.u64(at + 12, bigEndian), count, width);
    }
    return Numbers.NONE;
  }

  private long number(Numbers numbers, long i) throws IOException {
    long at = numbers.at() + i * numbers.width();
    return switch (numbers.width()) {
      case 2 -> file.u16(at, bigEndian);
      case 4 -> file.u32(at, bigEndian);
      default -> file.u64(at, bigEndian);
    };
  }
}
