package org.framewright.frames;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.base.Text;

/**
 * ISO base media files (ISO/IEC 14496-12): boxes of size and type, one after another and inside
 * each other. HEIF (ISO/IEC 23008-12) keeps its Exif as an item that {@code meta} locates; CR3
 * keeps it in boxes of its own below {@code moov} (layout as published by open-source readers).
 * What clips say besides, {@link ClipReader} reads.
 */
final class IsoReader {
  private static final String CR3_METADATA = "85c0b687820f11e08111f4ce462b6a48";
  private static final String CR3_PREVIEW = "eaf42b5e1c984b88b9fbb7dc406e4d16";
  private static final String CR3_XMP = "be7acfcb97a942e89c71999491e3afac";

  private static final int MOST_BOXES = 4096;
  private static final int MOST_ITEMS = 4096;
  private static final int MOST_EXTENTS = 1 << 16;

  record Box(String type, Bytes content) {}

  private record Item(long id, String type) {}

  /** What a file may begin with; clips of before {@code ftyp} was made begin with any of these. */
  private static final Set<String> BEGINNINGS =
      Set.of("ftyp", "moov", "mdat", "wide", "free", "skip", "pnot");

  /** Brands of HEIF and AVIF, which may keep their picture in their index. */
  private static final Set<String> PICTURES =
      Set.of("heic", "heix", "heim", "hevc", "hevx", "mif1", "msf1", "avif", "avis");

  private final Contents contents;
  private final ClipReader said;
  private int boxes;

  /** Whether its index locates items, as that of pictures does. */
  private boolean items;

  private IsoReader(Contents contents) {
    this.contents = contents;
    this.said = new ClipReader(contents, this);
  }

  static boolean claims(Bytes file) throws IOException {
    return file.holds(4, 4) && BEGINNINGS.contains(file.ascii(4, 4));
  }

  static void read(Bytes file, Contents contents) throws IOException {
    new IsoReader(contents).file(file);
  }

  private void file(Bytes file) throws IOException {
    boolean data = false;
    boolean index = false;
    boolean clip = false;
    boolean picture = file.holds(8, 4) && PICTURES.contains(file.ascii(8, 4));
    long at = 0;
    while (at < file.size()) {
      if (boxes >= MOST_BOXES && index && data) {
        // A clip in many pieces: its end is not looked for any further.
        break;
      }
      long size = sizeOf(file, at);
      var box = box(file, at, size);
      switch (box.type()) {
        case "moov" -> {
          index = true;
          clip = !picture;
          movie(box.content());
        }
        case "meta" -> {
          meta(file, box.content());
          index |= picture || items;
        }
        case "mdat" -> data = box.content().size() > 0;
        case "uuid" -> special(box.content());
        default -> {}
      }
      at += size;
    }
    if (!index || (clip && !data)) {
      contents.fault(Text.of("its picture data are missing"));
    }
    said.finish();
    TiffReader.noteIfHollow(file, contents);
  }

  /** The size of the box at an offset, its header included. */
  private long sizeOf(Bytes within, long at) throws IOException {
    if (++boxes > MOST_BOXES) {
      throw new Malformed(Text.of("it has more than {0} boxes", MOST_BOXES));
    }
    long size = within.u32(at, true);
    if (size == 0) {
      return within.size() - at;
    }
    if (size == 1) {
      size = within.u64(at + 8, true);
      if (size < 16) {
        throw new Malformed(Text.of("a box at byte {0} claims a size below its header's", at));
      }
    }
    if (size < 8) {
      throw new Malformed(Text.of("a box at byte {0} claims a size below its header's", at));
    }
    if (!within.holds(at, size)) {
      throw new Malformed(
          Text.of(
              "a box at byte {0} claims {1} bytes, but only {2} are left",
              at, size, within.size() - at));
    }
    return size;
  }

  private Box box(Bytes within, long at, long size) throws IOException {
    int header = within.u32(at, true) == 1 ? 16 : 8;
    return new Box(within.ascii(at + 4, 4), within.slice(at + header, size - header));
  }

  List<Box> inside(Bytes within) throws IOException {
    var found = new ArrayList<Box>();
    long at = 0;
    while (at + 8 <= within.size()) {
      long size = sizeOf(within, at);
      found.add(box(within, at, size));
      at += size;
    }
    return found;
  }

  private void movie(Bytes movie) throws IOException {
    for (var box : inside(movie)) {
      if (box.type().equals("uuid")) {
        special(box.content());
      } else {
        said.inMovie(box);
      }
    }
  }

  private void special(Bytes box) throws IOException {
    if (!box.holds(0, 16)) {
      return;
    }
    var rest = box.slice(16, box.size() - 16);
    switch (HexFormat.of().formatHex(box.read(0, 16))) {
      case CR3_METADATA -> cr3(rest);
      case CR3_PREVIEW -> preview(rest);
      case CR3_XMP -> contents.xmp(rest);
      default -> {}
    }
  }

  private void preview(Bytes rest) throws IOException {
    if (rest.size() <= 8) {
      return;
    }
    try {
      for (var inner : inside(rest.slice(8, rest.size() - 8))) {
        if (inner.type().equals("PRVW")) {
          embedded(inner.content());
        }
      }
    } catch (Malformed e) {
      // A picture is whole without its preview.
      return;
    }
  }

  private void cr3(Bytes boxesOfBody) throws IOException {
    for (var box : inside(boxesOfBody)) {
      switch (box.type()) {
        case "CMT1" -> {
          contents.exifWithPreviews(box.content());
        }
        case "CMT2" -> contents.exif(box.content());
        case "THMB" -> embedded(box.content());
        default -> {}
      }
    }
  }

  /** A JPEG behind a short header of a box. */
  private void embedded(Bytes box) throws IOException {
    for (long at = 0; at < 32 && box.holds(at, 3); at++) {
      if (box.u16(at, true) == 0xFFD8 && box.u8(at + 2) == 0xFF) {
        contents.preview(Preview.jpeg(box.slice(at, box.size() - at)));
        return;
      }
    }
  }

  /** What follows the version of a {@code meta}; QuickTime's has none. */
  static Bytes insideOfMeta(Bytes meta) throws IOException {
    if (meta.size() < 4) {
      throw new Malformed(Text.of("its index is cut off"));
    }
    int version = meta.holds(4, 4) && meta.ascii(4, 4).equals("hdlr") ? 0 : 4;
    return meta.slice(version, meta.size() - version);
  }

  private void meta(Bytes file, Bytes meta) throws IOException {
    var parts = new HashMap<String, Bytes>();
    for (var box : inside(insideOfMeta(meta))) {
      parts.putIfAbsent(box.type(), box.content());
    }
    if (parts.containsKey("xml ")) {
      said.xml(parts.get("xml "));
    }
    if (!parts.containsKey("iinf") || !parts.containsKey("iloc")) {
      return;
    }
    items = true;
    var places = places(file, parts.get("idat"), parts.get("iloc"));
    for (var item : items(parts.get("iinf"))) {
      var place = places.get(item.id());
      if (place == null) {
        continue;
      }
      switch (item.type()) {
        case "Exif" -> exif(place);
        case "jpeg" -> contents.preview(Preview.jpeg(place));
        default -> {}
      }
    }
  }

  /** An Exif item starts with the distance from there to its TIFF header (23008-12, annex A). */
  private void exif(Bytes item) throws IOException {
    long skip = 4 + item.u32(0, true);
    if (skip < item.size()) {
      var tiff = item.slice(skip, item.size() - skip);
      contents.exifWithPreviews(tiff);
    }
  }

  private List<Item> items(Bytes iinf) throws IOException {
    boolean wide = iinf.u8(0) != 0;
    long start = wide ? 8 : 6;
    var found = new ArrayList<Item>();
    for (var box : inside(iinf.slice(start, Math.max(0, iinf.size() - start)))) {
      var entry = box.content();
      int version = entry.size() > 0 ? entry.u8(0) : 0;
      if (box.type().equals("infe") && version >= 2) {
        boolean wideId = version > 2;
        long id = wideId ? entry.u32(4, true) : entry.u16(4, true);
        found.add(new Item(id, entry.ascii(wideId ? 10 : 8, 4)));
      }
    }
    return found;
  }

  /** Where the items lie that lie in one piece; that each lies inside the file is checked too. */
  private Map<Long, Bytes> places(Bytes file, Bytes idat, Bytes iloc) throws IOException {
    int version = iloc.u8(0);
    int offsetSize = iloc.u8(4) >> 4;
    int lengthSize = iloc.u8(4) & 15;
    int baseSize = iloc.u8(5) >> 4;
    int indexSize = version == 0 ? 0 : iloc.u8(5) & 15;
    boolean wide = version >= 2;
    long count = wide ? iloc.u32(6, true) : iloc.u16(6, true);
    if (count > MOST_ITEMS) {
      throw new Malformed(Text.of("its index claims {0} items", count));
    }
    long at = wide ? 10 : 8;
    var places = new HashMap<Long, Bytes>();
    long all = 0;
    for (long i = 0; i < count; i++) {
      long id = wide ? iloc.u32(at, true) : iloc.u16(at, true);
      at += wide ? 4 : 2;
      int method = 0;
      if (version > 0) {
        method = iloc.u16(at, true) & 15;
        at += 2;
      }
      at += 2;
      long base = number(iloc, at, baseSize);
      at += baseSize;
      int extents = iloc.u16(at, true);
      at += 2;
      all += extents;
      if (all > MOST_EXTENTS) {
        throw new Malformed(Text.of("its index claims more than {0} parts", MOST_EXTENTS));
      }
      for (int e = 0; e < extents; e++) {
        at += indexSize;
        long offset = base + number(iloc, at, offsetSize);
        at += offsetSize;
        long length = number(iloc, at, lengthSize);
        at += lengthSize;
        var within = method == 0 ? file : method == 1 ? idat : null;
        if (within == null) {
          continue;
        }
        if (!within.holds(offset, length)) {
          throw new Malformed(
              Text.of("a part of its picture lies outside its {0} bytes", file.size()));
        }
        if (extents == 1) {
          places.put(id, within.slice(offset, length == 0 ? within.size() - offset : length));
        }
      }
    }
    return places;
  }

  private static long number(Bytes in, long at, int size) throws IOException {
    return switch (size) {
      case 0 -> 0;
      case 4 -> in.u32(at, true);
      case 8 -> in.u64(at, true);
      default -> throw new Malformed(Text.of("its index has numbers of {0} bytes", size));
    };
  }
}
