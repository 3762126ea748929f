package org.framewright.frames;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Text;

/**
 * CRW: a Camera Image File Format of heaps, each with the directory of its values at its end, in
 * which further heaps lie. (Layout: CIFF 1.0, and P. Harvey, "The Canon RAW (CRW) File Format".)
 */
final class CiffReader {
  private static final String MAGIC = "HEAPCCDR";

  private static final int MAKE_AND_MODEL = 0x080A;
  private static final int TIME = 0x180E;
  private static final int SERIAL = 0x180B;
  private static final int IMAGE = 0x1810;
  private static final int SENSOR = 0x2005;
  private static final int JPEG = 0x2007;
  private static final int THUMBNAIL = 0x2008;

  /** Of the 16 bits of a tag: where its value lies, and what it is. */
  private static final int PLACE = 0xC000;

  private static final int IN_HEAP = 0x0000;
  private static final int IN_ENTRY = 0x4000;
  private static final int TYPE = 0x3800;
  private static final int HEAP_1 = 0x2800;
  private static final int HEAP_2 = 0x3000;

  private static final int ENTRY = 10;
  private static final int MOST_ENTRIES = 4096;
  private static final int DEEPEST = 8;
  private static final int LONGEST = 256;

  private final boolean bigEndian;
  private final Contents contents;
  private int entries;
  private boolean sensor;
  private String make = "";
  private String model = "";
  private String serial = "";
  private Optional<LocalDateTime> time = Optional.empty();

  private CiffReader(boolean bigEndian, Contents contents) {
    this.bigEndian = bigEndian;
    this.contents = contents;
  }

  static boolean claims(Bytes file) throws IOException {
    return file.holds(0, 14) && file.ascii(6, 8).equals(MAGIC);
  }

  static void read(Bytes file, Contents contents) throws IOException {
    var reader = new CiffReader(file.u8(0) == 'M', contents);
    long start = file.u32(2, reader.bigEndian);
    reader.heap(file.slice(start, file.size() - start), 0);
    if (!reader.sensor) {
      contents.fault(Text.of("it names no picture data"));
    }
    boolean known = !(reader.make + reader.model + reader.serial).isEmpty();
    contents.said(
        new Capture(
            reader.time,
            Optional.empty(),
            known
                ? Optional.of(new Camera(reader.make, reader.model, reader.serial))
                : Optional.empty(),
            OptionalInt.empty()));
    TiffReader.noteIfHollow(file, contents);
  }

  private void heap(Bytes heap, int depth) throws IOException {
    long at = heap.u32(heap.size() - 4, bigEndian);
    int count = heap.u16(at, bigEndian);
    entries += count;
    if (entries > MOST_ENTRIES || depth > DEEPEST) {
      throw new Malformed(Text.of("its directories claim more entries than is sensible"));
    }
    for (int i = 0; i < count; i++) {
      long entry = at + 2 + (long) ENTRY * i;
      int tag = heap.u16(entry, bigEndian);
      switch (tag & PLACE) {
        case IN_HEAP ->
            value(
                tag,
                heap.slice(heap.u32(entry + 6, bigEndian), heap.u32(entry + 2, bigEndian)),
                depth);
        case IN_ENTRY -> value(tag & ~PLACE, heap.slice(entry + 2, 8), depth);
        default -> {}
      }
    }
  }

  private void value(int tag, Bytes value, int depth) throws IOException {
    if ((tag & TYPE) == HEAP_1 || (tag & TYPE) == HEAP_2) {
      heap(value, depth + 1);
      return;
    }
    switch (tag) {
      case MAKE_AND_MODEL -> {
        var texts = value.ascii(0, (int) Math.min(LONGEST, value.size())).split("\0", 3);
        make = texts.length > 0 ? texts[0].strip() : "";
        model = texts.length > 1 ? texts[1].strip() : "";
      }
      // Seconds since 1970 by the body's own clock, in no zone.
      case TIME -> time = time(value.u32(0, bigEndian));
      case SERIAL -> serial = "%010d".formatted(value.u32(0, bigEndian));
      case IMAGE -> contents.orientation(orientation((int) value.u32(12, bigEndian)));
      case SENSOR -> sensor = value.size() > 0;
      case JPEG, THUMBNAIL -> contents.preview(Preview.jpeg(value));
      default -> {}
    }
  }

  static Optional<LocalDateTime> time(long seconds) {
    try {
      return seconds == 0
          ? Optional.empty()
          : Optional.of(LocalDateTime.ofEpochSecond(seconds, 0, ZoneOffset.UTC));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Exif Orientation for a picture that must be turned clockwise. */
  static int orientation(int degrees) {
    return switch (Math.floorMod(degrees, 360)) {
      case 90 -> 6;
      case 180 -> 3;
      case 270 -> 8;
      default -> 1;
    };
  }
}
