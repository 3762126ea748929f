package org.framewright.frames;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * The fields of one directory of a TIFF 6.0 or BigTIFF file, or of a block of Exif, which is built
 * as a TIFF.
 */
final class TiffFields {
  private static final int MOST_FIELDS = 4096;
  private static final int MOST_NUMBERS = 64;
  private static final int BIG = 43;

  private static final int X_RESOLUTION = 0x011A;
  private static final int Y_RESOLUTION = 0x011B;
  private static final int RESOLUTION_UNIT = 0x0128;
  private static final double CENTIMETRES = 2.54;

  private static final int[] TYPE_SIZES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8};

  private record Field(int type, long count, long at) {}

  private final Bytes file;
  private final boolean bigEndian;
  private final boolean big;
  private final Map<Integer, Field> fields = new HashMap<>();
  private final long next;

  private TiffFields(Bytes file, boolean bigEndian, boolean big, long at) throws IOException {
    this.file = file;
    this.bigEndian = bigEndian;
    this.big = big;
    long count = big ? file.u64(at, bigEndian) : file.u16(at, bigEndian);
    if (count > MOST_FIELDS) {
      throw new Malformed(Text.of("a directory has more fields than is sensible"));
    }
    int wide = big ? 8 : 4;
    int entry = 4 + 2 * wide;
    long first = at + (big ? 8 : 2);
    for (int i = 0; i < count; i++) {
      long here = first + (long) i * entry;
      int type = file.u16(here + 2, bigEndian);
      if (type < TYPE_SIZES.length && TYPE_SIZES[type] > 0) {
        long values = wide(here + 4);
        long value = here + 4 + wide;
        boolean inside = values <= wide / TYPE_SIZES[type];
        fields.putIfAbsent(
            file.u16(here, bigEndian), new Field(type, values, inside ? value : wide(value)));
      }
    }
    long behind = first + count * entry;
    this.next = file.holds(behind, wide) ? wide(behind) : 0;
  }

  /** The first directory. */
  static TiffFields first(Bytes file) throws IOException {
    boolean bigEndian = file.u8(0) == 'M';
    boolean big = file.u16(2, bigEndian) == BIG;
    return new TiffFields(
        file, bigEndian, big, big ? file.u64(8, bigEndian) : file.u32(4, bigEndian));
  }

  /** Where the next one lies; 0 where there is none. */
  long next() {
    return next;
  }

  TiffFields at(long place) throws IOException {
    return new TiffFields(file, bigEndian, big, place);
  }

  boolean isBigEndian() {
    return bigEndian;
  }

  boolean isBig() {
    return big;
  }

  private long wide(long at) throws IOException {
    return big ? file.u64(at, bigEndian) : file.u32(at, bigEndian);
  }

  boolean has(int tag) {
    return fields.containsKey(tag);
  }

  /** How many values a field has; 0 where there is none. */
  long count(int tag) {
    return has(tag) ? fields.get(tag).count() : 0;
  }

  /** Its first whole numbers; none where there is no such field. */
  long[] numbers(int tag) throws IOException {
    var field = fields.get(tag);
    if (field == null) {
      return new long[0];
    }
    int size = TYPE_SIZES[field.type()];
    var numbers = new long[(int) Math.min(MOST_NUMBERS, field.count())];
    for (int i = 0; i < numbers.length; i++) {
      long at = field.at() + (long) i * size;
      numbers[i] =
          switch (field.type()) {
            case 1 -> file.u8(at);
            case 3 -> file.u16(at, bigEndian);
            case 4, 13 -> file.u32(at, bigEndian);
            case 16, 18 -> file.u64(at, bigEndian);
            default -> throw new Malformed(Text.of("a field of its header has no whole numbers"));
          };
    }
    return numbers;
  }

  long number(int tag, long otherwise) throws IOException {
    var numbers = numbers(tag);
    return numbers.length == 0 ? otherwise : numbers[0];
  }

  /** The bytes of a field. */
  Optional<Bytes> bytes(int tag) throws IOException {
    var field = fields.get(tag);
    return field == null
        ? Optional.empty()
        : Optional.of(values(file, field.at(), field.type(), field.count()));
  }

  /** The values of a field; of types that are not known nothing is asked. */
  static Bytes values(Bytes file, long at, int type, long count) throws IOException {
    int size = type < TYPE_SIZES.length ? TYPE_SIZES[type] : 0;
    if (count > file.size()) {
      throw new Malformed(Text.of("a field has more values than there is room for"));
    }
    return file.slice(size == 0 ? 0 : at, count * size);
  }

  /** TIFF 6.0, section 8: a unit of 2 is the inch, of 3 the centimetre, of 1 none. */
  Optional<PictureHeader.Resolution> resolution() throws IOException {
    long unit = number(RESOLUTION_UNIT, 2);
    if (!has(X_RESOLUTION) || !has(Y_RESOLUTION) || (unit != 2 && unit != 3)) {
      return Optional.empty();
    }
    double perInch = unit == 3 ? CENTIMETRES : 1;
    double across = fraction(X_RESOLUTION) * perInch;
    double down = fraction(Y_RESOLUTION) * perInch;
    return across > 0 && down > 0
        ? Optional.of(new PictureHeader.Resolution(across, down))
        : Optional.empty();
  }

  private double fraction(int tag) throws IOException {
    var field = fields.get(tag);
    if (field.type() != 5 || field.count() < 1) {
      return 0;
    }
    long below = file.u32(field.at() + 4, bigEndian);
    return below == 0 ? 0 : (double) file.u32(field.at(), bigEndian) / below;
  }
}
