package org.framewright.frames;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.framewright.base.Text;

/**
 * What makes the picture of a TIFF 6.0 file or a raw on it: of each directory with picture data how
 * they are to be read, and the data themselves in order. Offsets do not count, since a rewrite
 * moves them. RW2 keeps its data from an offset to the end of the file.
 */
final class TiffPicture {
  private static final int WIDTH = 0x0100;
  private static final int HEIGHT = 0x0101;
  private static final int STRIP_OFFSETS = 0x0111;
  private static final int STRIP_COUNTS = 0x0117;
  private static final int TILE_OFFSETS = 0x0144;
  private static final int TILE_COUNTS = 0x0145;
  private static final int SUB_IFDS = 0x014A;
  private static final int RW2 = 0x0055;
  private static final int RW2_WIDTH = 0x0002;
  private static final int RW2_HEIGHT = 0x0003;
  private static final int RW2_DATA = 0x0118;

  /**
   * Size, bits, compression, photometric, samples, rows, planes, predictor, tiles, sample format;
   * the sensor's pattern, black, white, crop, active area, and linearisation (TIFF/EP, DNG 1.7).
   */
  private static final int[] READ_BY = {
    0x00FE, 0x0100, 0x0101, 0x0102, 0x0103, 0x0106, 0x0115, 0x0116, 0x011C, 0x013D, 0x0142, 0x0143,
    0x0153, 0x828D, 0x828E, 0xC618, 0xC619, 0xC61A, 0xC61D, 0xC61F, 0xC620, 0xC68D
  };

  private static final int MOST_DIRECTORIES = 64;
  private static final int MOST_FIELDS = 4096;
  private static final int MOST_PARTS = 1 << 16;
  private static final int[] TYPE_SIZES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4};

  private record Field(int type, long count, long at) {}

  private final Bytes file;
  private final boolean bigEndian;
  private final PictureDigest.Into into;
  private boolean found;

  private TiffPicture(Bytes file, PictureDigest.Into into) throws IOException {
    this.file = file;
    this.bigEndian = file.u8(0) == 'M';
    this.into = into;
  }

  static Optional<String> digest(Bytes file, PictureDigest.Into into) throws IOException {
    // IIQ keeps its data where only its maker's notes lead.
    if (file.holds(8, 4) && (file.ascii(8, 4).equals("IIII") || file.ascii(8, 4).equals("MMMM"))) {
      return Optional.empty();
    }
    var picture = new TiffPicture(file, into);
    return file.u16(2, picture.bigEndian) == RW2 ? picture.rw2() : picture.tiff();
  }

  private Optional<String> rw2() throws IOException {
    var fields = fields(file.u32(4, bigEndian));
    var data = fields.get(RW2_DATA);
    if (data == null) {
      return Optional.empty();
    }
    long from = numbers(data)[0];
    into.pixels(first(fields, RW2_WIDTH), first(fields, RW2_HEIGHT));
    for (int tag : new int[] {RW2_WIDTH, RW2_HEIGHT, 0x0009, 0x000A, 0x000B}) {
      field(tag, fields.get(tag));
    }
    into.data(from, file.size() - from);
    return Optional.of("rw2");
  }

  private Optional<String> tiff() throws IOException {
    var seen = new HashSet<Long>();
    var waiting = new ArrayDeque<Long>();
    waiting.add(file.u32(4, bigEndian));
    while (!waiting.isEmpty()) {
      long at = waiting.remove();
      if (at == 0) {
        continue;
      }
      if (!seen.add(at) || seen.size() > MOST_DIRECTORIES) {
        return Optional.empty();
      }
      var fields = fields(at);
      if (!data(fields)) {
        return Optional.empty();
      }
      if (fields.containsKey(SUB_IFDS)) {
        for (long sub : numbers(fields.get(SUB_IFDS))) {
          waiting.add(sub);
        }
      }
      long next = at + 2 + 12L * file.u16(at, bigEndian);
      if (file.holds(next, 4)) {
        waiting.add(file.u32(next, bigEndian));
      }
    }
    return found ? Optional.of("tiff") : Optional.empty();
  }

  private Map<Integer, Field> fields(long at) throws IOException {
    int count = file.u16(at, bigEndian);
    if (count > MOST_FIELDS) {
      throw new Malformed(Text.of("a directory claims {0} fields", count));
    }
    var fields = new TreeMap<Integer, Field>();
    for (int i = 0; i < count; i++) {
      long entry = at + 2 + 12L * i;
      int type = file.u16(entry + 2, bigEndian);
      if (type == 0 || type >= TYPE_SIZES.length) {
        continue;
      }
      long values = file.u32(entry + 4, bigEndian);
      long length = values * TYPE_SIZES[type];
      long place = length <= 4 ? entry + 8 : file.u32(entry + 8, bigEndian);
      fields.put(file.u16(entry, bigEndian), new Field(type, values, place));
    }
    return fields;
  }

  /** Adds the data of a directory; false where they are not fully understood. */
  private boolean data(Map<Integer, Field> fields) throws IOException {
    boolean tiles = fields.containsKey(TILE_OFFSETS);
    var offsets = fields.get(tiles ? TILE_OFFSETS : STRIP_OFFSETS);
    if (offsets == null) {
      return true;
    }
    var counts = fields.get(tiles ? TILE_COUNTS : STRIP_COUNTS);
    if (counts == null) {
      return false;
    }
    var starts = numbers(offsets);
    var lengths = numbers(counts);
    if (starts.length == 0 || starts.length != lengths.length) {
      return false;
    }
    for (int tag : READ_BY) {
      field(tag, fields.get(tag));
    }
    into.pixels(first(fields, WIDTH), first(fields, HEIGHT));
    for (int i = 0; i < starts.length; i++) {
      into.data(starts[i], lengths[i]);
    }
    found = true;
    return true;
  }

  private void field(int tag, Field field) throws IOException {
    if (field != null) {
      into.number(tag);
      into.number(field.type());
      into.part(field.at(), field.count() * TYPE_SIZES[field.type()]);
    }
  }

  private long first(Map<Integer, Field> fields, int tag) throws IOException {
    var field = fields.get(tag);
    var numbers = field == null ? new long[0] : numbers(field);
    return Arrays.stream(numbers).findFirst().orElse(0);
  }

  private long[] numbers(Field field) throws IOException {
    int size = TYPE_SIZES[field.type()];
    boolean whole = field.type() == 3 || field.type() == 4 || field.type() == 13;
    if (!whole
        || field.count() < 1
        || field.count() > MOST_PARTS
        || !file.holds(field.at(), field.count() * size)) {
      throw new Malformed(Text.of("a field lies outside, or has too many numbers"));
    }
    var values = new long[(int) field.count()];
    for (int i = 0; i < values.length; i++) {
      long at = field.at() + (long) i * size;
      values[i] = size == 2 ? file.u16(at, bigEndian) : file.u32(at, bigEndian);
    }
    return values;
  }
}
