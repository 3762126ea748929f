package org.framewright.frames;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.framewright.base.Text;

/**
 * TIFF 6.0 and the raws that are built on it: directories of fields that point at each other and at
 * the picture's data. Asked of them: do all data lie inside the file, and where are the previews.
 * What they say of the capture is read elsewhere, see {@link ExifReader}.
 */
final class TiffReader {
  private static final int SUBFILE_TYPE = 0x00FE;
  private static final int WIDTH = 0x0100;
  private static final int HEIGHT = 0x0101;
  private static final int BITS = 0x0102;
  private static final int COMPRESSION = 0x0103;
  private static final int PHOTOMETRIC = 0x0106;
  static final int STRIP_OFFSETS = 0x0111;
  private static final int ORIENTATION = 0x0112;
  private static final int SAMPLES = 0x0115;
  static final int STRIP_COUNTS = 0x0117;
  static final int TILE_OFFSETS = 0x0144;
  static final int TILE_COUNTS = 0x0145;
  private static final int SUB_IFDS = 0x014A;
  private static final int JPEG_OFFSET = 0x0201;
  private static final int JPEG_LENGTH = 0x0202;
  private static final int XMP = 0x02BC;
  private static final int EXIF_IFD = 0x8769;

  /** In RW2 a JPEG lies in a field of its own, and the raw data run from an offset to the end. */
  private static final int RW2_MAGIC = 0x0055;

  private static final int RW2_JPEG = 0x002E;
  private static final int RW2_DATA = 0x0118;

  private static final int MOST_DIRECTORIES = 64;
  private static final int MOST_FIELDS = 4096;
  private static final int MOST_PARTS = 1 << 16;
  private static final int TAIL = 16;

  private static final int[] TYPE_SIZES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4};

  private static final long[] NO_NUMBERS = {};

  private record Field(int tag, int type, long count, long at) {}

  /** Only the fields that are asked for: directories of thousands of files are much garbage. */
  private record Directory(boolean ofPicture, List<Field> fields) {
    /** Null if there is none. */
    Field field(int tag) {
      for (var field : fields) {
        if (field.tag() == tag) {
          return field;
        }
      }
      return null;
    }

    boolean has(int tag) {
      return field(tag) != null;
    }
  }

  private final Bytes file;
  private final boolean bigEndian;
  private final int magic;

  /** Whether some field's value lies behind the end. */
  private boolean openEnded;

  private TiffReader(Bytes file) throws IOException {
    this.file = file;
    this.bigEndian = file.u8(0) == 'M';
    this.magic = file.u16(2, bigEndian);
  }

  static boolean claims(Bytes file) throws IOException {
    if (!file.holds(0, 8)) {
      return false;
    }
    int order = file.u16(0, true);
    if (order != 0x4949 && order != 0x4D4D) {
      return false;
    }
    int magic = file.u16(2, order == 0x4D4D);
    return magic == 42 || magic == RW2_MAGIC || magic == 0x4F52 || magic == 0x5352;
  }

  /** Reads a whole file. */
  static void read(Bytes file, Contents contents) throws IOException {
    var reader = new TiffReader(file);
    contents.exif(file);
    var directories = reader.directories();
    if (directories.isEmpty()) {
      contents.fault(Text.of("it has no directory of its contents"));
    }
    boolean picture = false;
    for (var directory : directories) {
      if (directory.ofPicture()) {
        picture |= reader.checkData(directory, contents);
        reader.preview(directory, contents);
      }
    }
    if (reader.openEnded) {
      contents.lack(Text.of("a part of what it says of its picture lies behind its end"));
    }
    if (!picture && !directories.isEmpty()) {
      contents.doubt(Text.of("it names no picture data"));
    }
    reader.orientation(directories, contents);
    reader.xmp(directories, contents);
    noteIfHollow(file, contents);
  }

  /** Reads the previews and the orientation of a block of Exif; whatever is broken is left out. */
  static void readPreviews(Bytes block, Contents contents) throws IOException {
    if (!claims(block)) {
      return;
    }
    try {
      var reader = new TiffReader(block);
      var directories = reader.directories();
      reader.orientation(directories, contents);
      for (var directory : directories) {
        if (directory.ofPicture()) {
          reader.preview(directory, contents);
        }
      }
    } catch (Malformed e) {
      // A picture is whole without its thumbnail.
      return;
    }
  }

  static void noteIfHollow(Bytes file, Contents contents) throws IOException {
    int length = (int) Math.min(TAIL, file.size());
    if (file.isZero(file.size() - length, length)) {
      contents.hollow();
    }
  }

  /** The directories that hang together: the chain, those below each, and the one of the Exif. */
  private List<Directory> directories() throws IOException {
    var found = new ArrayList<Directory>();
    var seen = new HashSet<Long>();
    var waiting = new ArrayDeque<Long>();
    var exif = new HashSet<Long>();
    waiting.add(file.u32(4, bigEndian));
    while (!waiting.isEmpty() && found.size() < MOST_DIRECTORIES) {
      long at = waiting.remove();
      if (at == 0 || !seen.add(at)) {
        continue;
      }
      boolean ofPicture = !exif.contains(at);
      int count = file.u16(at, bigEndian);
      if (count > MOST_FIELDS) {
        throw new Malformed(Text.of("a directory at byte {0} claims {1} fields", at, count));
      }
      var fields = new ArrayList<Field>();
      for (int i = 0; i < count; i++) {
        long entry = at + 2 + 12L * i;
        int type = file.u16(entry + 2, bigEndian);
        long values = file.u32(entry + 4, bigEndian);
        if (type == 0 || type >= TYPE_SIZES.length) {
          continue;
        }
        long length = values * TYPE_SIZES[type];
        long place = length <= 4 ? entry + 8 : file.u32(entry + 8, bigEndian);
        openEnded |= !file.holds(place, length);
        int tag = file.u16(entry, bigEndian);
        if (isAskedFor(tag)) {
          fields.add(new Field(tag, type, values, place));
        }
      }
      var directory = new Directory(ofPicture, fields);
      found.add(directory);
      if (!ofPicture) {
        continue;
      }
      for (long sub : numbers(directory.field(EXIF_IFD), 1)) {
        exif.add(sub);
        waiting.add(sub);
      }
      for (long sub : numbers(directory.field(SUB_IFDS), MOST_DIRECTORIES)) {
        waiting.add(sub);
      }
      long next = at + 2 + 12L * count;
      if (file.holds(next, 4)) {
        waiting.add(file.u32(next, bigEndian));
      }
    }
    return found;
  }

  private static boolean isAskedFor(int tag) {
    return switch (tag) {
      case SUBFILE_TYPE,
          WIDTH,
          HEIGHT,
          BITS,
          COMPRESSION,
          PHOTOMETRIC,
          STRIP_OFFSETS,
          ORIENTATION,
          SAMPLES,
          STRIP_COUNTS,
          TILE_OFFSETS,
          TILE_COUNTS,
          SUB_IFDS,
          JPEG_OFFSET,
          JPEG_LENGTH,
          XMP,
          EXIF_IFD,
          RW2_JPEG,
          RW2_DATA ->
          true;
      default -> false;
    };
  }

  /** Whether all data that a directory names lie inside the file; answers if it names any. */
  private boolean checkData(Directory directory, Contents contents) throws IOException {
    boolean tiles = inside(directory.field(TILE_OFFSETS), directory.field(TILE_COUNTS), contents);
    boolean jpeg = inside(directory.field(JPEG_OFFSET), directory.field(JPEG_LENGTH), contents);
    boolean strips;
    if (magic == RW2_MAGIC && directory.has(RW2_DATA)) {
      long data = number(directory.field(RW2_DATA)).orElse(0);
      if (data >= file.size()) {
        contents.fault(outside(data));
      }
      strips = true;
    } else {
      strips = inside(directory.field(STRIP_OFFSETS), directory.field(STRIP_COUNTS), contents);
    }
    return tiles || jpeg || strips;
  }

  private boolean inside(Field offsets, Field counts, Contents contents) throws IOException {
    if (offsets == null || counts == null) {
      return false;
    }
    var starts = numbers(offsets, MOST_PARTS);
    var lengths = numbers(counts, MOST_PARTS);
    for (int i = 0; i < Math.min(starts.length, lengths.length); i++) {
      if (!file.holds(starts[i], lengths[i])) {
        contents.fault(outside(starts[i] + lengths[i]));
        return true;
      }
    }
    return starts.length > 0;
  }

  private Text outside(long end) {
    return Text.of("its picture data reach to byte {0}, but it ends at byte {1}", end, file.size());
  }

  private void preview(Directory directory, Contents contents) throws IOException {
    var start = number(directory.field(JPEG_OFFSET));
    var length = number(directory.field(JPEG_LENGTH));
    if (start.isPresent() && length.isPresent()) {
      jpeg(start.getAsLong(), length.getAsLong(), contents);
    }
    var embedded = directory.field(RW2_JPEG);
    if (magic == RW2_MAGIC && embedded != null) {
      jpeg(embedded.at(), embedded.count(), contents);
      exifOf(embedded, contents);
    }
    strips(directory, contents);
  }

  /** An RW2's maker's notes lie in the Exif of its JPEG. */
  private void exifOf(Field embedded, Contents contents) throws IOException {
    if (file.holds(embedded.at(), embedded.count())) {
      JpegReader.exifOf(file.slice(embedded.at(), embedded.count()), contents);
    }
  }

  private void jpeg(long start, long length, Contents contents) throws IOException {
    if (length > 2 && file.holds(start, length) && file.u16(start, true) == 0xFFD8) {
      contents.preview(Preview.jpeg(file.slice(start, length)));
    }
  }

  private void strips(Directory directory, Contents contents) throws IOException {
    var starts = numbers(directory.field(STRIP_OFFSETS), MOST_PARTS);
    var lengths = numbers(directory.field(STRIP_COUNTS), MOST_PARTS);
    if (starts.length == 0 || starts.length != lengths.length) {
      return;
    }
    long end = starts[0];
    for (int i = 0; i < starts.length; i++) {
      if (starts[i] != end) {
        return;
      }
      end += lengths[i];
    }
    long all = end - starts[0];
    switch ((int) number(directory.field(COMPRESSION)).orElse(1)) {
      case 6, 7 -> {
        if (starts.length == 1) {
          jpeg(starts[0], all, contents);
        }
      }
      case 1 -> {
        long width = number(directory.field(WIDTH)).orElse(0);
        long height = number(directory.field(HEIGHT)).orElse(0);
        boolean rgb =
            number(directory.field(PHOTOMETRIC)).orElse(0) == 2
                && number(directory.field(SAMPLES)).orElse(1) == 3
                && number(directory.field(BITS)).orElse(1) == 8;
        boolean small = width > 0 && height > 0 && width <= 2048 && height <= 2048;
        boolean reduced = number(directory.field(SUBFILE_TYPE)).orElse(0) == 1;
        if (rgb
            && small
            && (reduced || magic != 42 || directory.has(SUB_IFDS))
            && all >= width * height * 3
            && file.holds(starts[0], width * height * 3)) {
          var rows = file.slice(starts[0], width * height * 3);
          contents.preview(new Preview(rows, true, (int) width, (int) height));
        }
      }
      default -> {}
    }
  }

  private void orientation(List<Directory> directories, Contents contents) throws IOException {
    for (var directory : directories) {
      var orientation = number(directory.field(ORIENTATION));
      if (orientation.isPresent()) {
        contents.orientation((int) orientation.getAsLong());
        return;
      }
    }
  }

  private void xmp(List<Directory> directories, Contents contents) throws IOException {
    var packet =
        directories.stream()
            .flatMap(directory -> Optional.ofNullable(directory.field(XMP)).stream())
            .findFirst();
    if (packet.isPresent() && file.holds(packet.get().at(), packet.get().count())) {
      contents.xmp(file.slice(packet.get().at(), packet.get().count()));
    }
  }

  private OptionalLong number(Field field) throws IOException {
    var numbers = numbers(field, 1);
    return numbers.length == 0 ? OptionalLong.empty() : OptionalLong.of(numbers[0]);
  }

  private long[] numbers(Field field, int most) throws IOException {
    if (field == null) {
      return NO_NUMBERS;
    }
    int size = TYPE_SIZES[field.type()];
    boolean whole = field.type() == 3 || field.type() == 4 || field.type() == 13;
    if (!whole || !file.holds(field.at(), field.count() * size)) {
      return NO_NUMBERS;
    }
    var values = new long[(int) Math.min(most, field.count())];
    for (int i = 0; i < values.length; i++) {
      long at = field.at() + (long) i * size;
      values[i] = size == 2 ? file.u16(at, bigEndian) : file.u32(at, bigEndian);
    }
    return values;
  }
}
