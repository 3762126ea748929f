package org.framewright.frames;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.framewright.base.Text;

/**
 * What makes the picture of a HEIF (ISO/IEC 23008-12, 14496-12): of each image item its kind, its
 * properties, what it is made of, and its data; which of them is the primary one. The items that
 * describe, Exif and XMP, are left out; they move the data of the others when they are rewritten,
 * so nothing here depends on where data lie. There is no digest where anything else is met: films,
 * protected or foreign items, data in other files.
 */
final class HeifPicture {
  private static final Set<String> BRANDS = Set.of("heic", "heix", "mif1", "avif");

  private static final Set<String> AT_TOP = Set.of("ftyp", "meta", "mdat", "free", "skip");

  private static final Set<String> IN_META =
      Set.of("hdlr", "dinf", "pitm", "iinf", "iref", "iprp", "iloc", "idat", "grpl", "free");

  private static final Set<String> IMAGES =
      Set.of("hvc1", "av01", "jpeg", "grid", "iovl", "iden", "tmap");

  private static final String XMP = "application/rdf+xml";
  private static final int MOST_ITEMS = 4096;
  private static final int MOST_EXTENTS = 1 << 16;
  private static final int LONGEST_NAME = 1 << 12;

  /** A stretch of the file. */
  private record Extent(long from, long length) {}

  /** A property of an item, and whether it must be understood. */
  private record Property(IsoBoxes.Box box, boolean essential) {}

  private final Bytes file;
  private final PictureDigest.Into into;
  private final IsoBoxes boxes;

  /** By the number of the item; only those that are images. */
  private final SortedMap<Long, String> images = new TreeMap<>();

  private final Map<Long, Long> flags = new HashMap<>();
  private final Map<Long, List<Extent>> extents = new HashMap<>();
  private final Map<Long, List<Property>> properties = new HashMap<>();

  private HeifPicture(Bytes file, PictureDigest.Into into) {
    this.file = file;
    this.into = into;
    this.boxes = new IsoBoxes(file);
  }

  static Optional<String> digest(Bytes file, PictureDigest.Into into) throws IOException {
    return BRANDS.contains(file.ascii(8, 4))
        ? new HeifPicture(file, into).digest()
        : Optional.empty();
  }

  private Optional<String> digest() throws IOException {
    var top = boxes.filling(0, file.size());
    var metas = top.stream().filter(box -> box.type().equals("meta")).toList();
    if (metas.size() != 1 || !top.stream().allMatch(box -> AT_TOP.contains(box.type()))) {
      return Optional.empty();
    }
    var meta = metas.getFirst();
    var inside = new HashMap<String, IsoBoxes.Box>();
    for (var box : boxes.filling(meta.from() + 4, meta.length() - 4)) {
      boolean twice = inside.put(box.type(), box) != null && !box.type().equals("free");
      if (twice || !IN_META.contains(box.type())) {
        return Optional.empty();
      }
    }
    if (!inside.keySet().containsAll(Set.of("hdlr", "pitm", "iinf", "iloc", "iprp"))
        || !file.ascii(inside.get("hdlr").from() + 8, 4).equals("pict")
        || !items(inside.get("iinf"))) {
      return Optional.empty();
    }
    locations(inside.get("iloc"), Optional.ofNullable(inside.get("idat")));
    properties(inside.get("iprp"));
    var primary = inside.get("pitm");
    into.number(number(primary, 4, version(primary) == 0 ? 2 : 4));
    for (var item : images.entrySet()) {
      image(item.getKey(), item.getValue());
    }
    if (inside.containsKey("iref")) {
      references(inside.get("iref"));
    }
    if (inside.containsKey("grpl")) {
      var groups = inside.get("grpl");
      into.part(groups.from(), groups.length());
    }
    return Optional.of("heif");
  }

  private int version(IsoBoxes.Box box) throws IOException {
    return (int) number(box, 0, 1);
  }

  /** A number at an offset of a box. */
  private long number(IsoBoxes.Box box, long offset, int size) throws IOException {
    if (offset < 0 || offset + size > box.length()) {
      throw new Malformed(Text.of("a box is too short for what it should have"));
    }
    return switch (size) {
      case 0 -> 0;
      case 1 -> file.u8(box.from() + offset);
      case 2 -> file.u16(box.from() + offset, true);
      case 4 -> file.u32(box.from() + offset, true);
      case 8 -> file.u64(box.from() + offset, true);
      default -> throw new Malformed(Text.of("its index has numbers of {0} bytes", size));
    };
  }

  /** Notes the items that are images; false where one is neither that nor a description. */
  private boolean items(IsoBoxes.Box iinf) throws IOException {
    int start = version(iinf) == 0 ? 6 : 8;
    for (var entry : boxes.filling(iinf.from() + start, iinf.length() - start)) {
      int version = version(entry);
      if (!entry.type().equals("infe") || (version != 2 && version != 3)) {
        return false;
      }
      int wide = version == 2 ? 2 : 4;
      long id = number(entry, 4, wide);
      boolean isProtected = number(entry, 4L + wide, 2) != 0;
      var type = file.ascii(entry.from() + 6 + wide, 4);
      if (isProtected || images.containsKey(id) || images.size() >= MOST_ITEMS) {
        return false;
      }
      if (IMAGES.contains(type)) {
        images.put(id, type);
        flags.put(id, number(entry, 3, 1) & 1);
      } else if (!type.equals("Exif") && !isXmp(entry, type, 10L + wide)) {
        return false;
      }
    }
    return !images.isEmpty();
  }

  /** The name of the item, ended by a zero, comes before the type of its content. */
  private boolean isXmp(IsoBoxes.Box entry, String type, long at) throws IOException {
    if (!type.equals("mime") || entry.length() > LONGEST_NAME || at > entry.length()) {
      return false;
    }
    var text = file.ascii(entry.from() + at, (int) (entry.length() - at));
    int end = text.indexOf('\0');
    return end >= 0 && text.startsWith(XMP + '\0', end + 1);
  }

  private void locations(IsoBoxes.Box iloc, Optional<IsoBoxes.Box> idat) throws IOException {
    int version = version(iloc);
    if (version > 2) {
      throw new Malformed(Text.of("its index is of a version that is not known"));
    }
    int offsetSize = (int) number(iloc, 4, 1) >> 4;
    int lengthSize = (int) number(iloc, 4, 1) & 15;
    int baseSize = (int) number(iloc, 5, 1) >> 4;
    int indexSize = version == 0 ? 0 : (int) number(iloc, 5, 1) & 15;
    int wide = version == 2 ? 4 : 2;
    long count = number(iloc, 6, wide);
    long at = 6L + wide;
    int all = 0;
    for (long i = 0; i < count && i < MOST_ITEMS; i++) {
      long id = number(iloc, at, wide);
      at += wide;
      int method = 0;
      if (version > 0) {
        method = (int) number(iloc, at, 2) & 15;
        at += 2;
      }
      boolean elsewhere = number(iloc, at, 2) != 0;
      long base = number(iloc, at + 2, baseSize);
      long pieces = number(iloc, at + 2 + baseSize, 2);
      at += 4L + baseSize;
      var found = new ArrayList<Extent>();
      for (long e = 0; e < pieces; e++) {
        at += indexSize;
        long offset = base + number(iloc, at, offsetSize);
        long length = number(iloc, at + offsetSize, lengthSize);
        at += (long) offsetSize + lengthSize;
        found.add(new Extent(offset + (method == 1 ? from(idat) : 0), length));
        if (++all > MOST_EXTENTS || offset < 0) {
          throw new Malformed(Text.of("its index claims more than is sensible"));
        }
        boolean inside =
            method == 0 || (method == 1 && offset + length <= idat.orElseThrow().length());
        if (images.containsKey(id) && (elsewhere || !inside || length == 0)) {
          throw new Malformed(Text.of("an image of it lies where it is not looked for"));
        }
      }
      if (extents.put(id, found) != null) {
        throw new Malformed(Text.of("its index names an item twice"));
      }
    }
  }

  private static long from(Optional<IsoBoxes.Box> idat) throws Malformed {
    return idat.orElseThrow(
            () -> new Malformed(Text.of("its index leads to a box that is missing")))
        .from();
  }

  private void properties(IsoBoxes.Box iprp) throws IOException {
    var all = new ArrayList<IsoBoxes.Box>();
    var inside = boxes.filling(iprp.from(), iprp.length());
    for (var box : inside) {
      if (box.type().equals("ipco")) {
        all.addAll(boxes.filling(box.from(), box.length()));
      }
    }
    for (var box : inside) {
      if (box.type().equals("ipma")) {
        associations(box, all);
      }
    }
  }

  private void associations(IsoBoxes.Box ipma, List<IsoBoxes.Box> all) throws IOException {
    int idSize = version(ipma) == 0 ? 2 : 4;
    int size = (number(ipma, 3, 1) & 1) == 0 ? 1 : 2;
    int essentialBit = size == 1 ? 0x80 : 0x8000;
    long count = number(ipma, 4, 4);
    long at = 8;
    for (long i = 0; i < count && i < MOST_ITEMS; i++) {
      long id = number(ipma, at, idSize);
      int associated = (int) number(ipma, at + idSize, 1);
      at += idSize + 1L;
      var of = new ArrayList<Property>();
      for (int k = 0; k < associated; k++) {
        int said = (int) number(ipma, at, size);
        at += size;
        int index = said & (essentialBit - 1);
        if (index > all.size()) {
          throw new Malformed(Text.of("an item of it has a property that is missing"));
        }
        if (index > 0) {
          of.add(new Property(all.get(index - 1), (said & essentialBit) != 0));
        }
      }
      if (properties.put(id, of) != null) {
        throw new Malformed(Text.of("an item of it has its properties twice"));
      }
    }
  }

  private void image(long id, String type) throws IOException {
    into.number(id);
    into.number(flags.get(id));
    into.bytes(ascii(type));
    var of = properties.getOrDefault(id, List.of());
    into.number(of.size());
    for (var property : of) {
      var box = property.box();
      into.number(property.essential() ? 1 : 0);
      into.bytes(ascii(box.type()));
      into.part(box.from(), box.length());
      if (box.type().equals("ispe")) {
        into.pixels(number(box, 4, 4), number(box, 8, 4));
      }
    }
    var data = extents.getOrDefault(id, List.of());
    into.number(data.size());
    for (var extent : data) {
      into.data(extent.from(), extent.length());
    }
  }

  /** What images are made of, or are to each other; not what describes them. */
  private void references(IsoBoxes.Box iref) throws IOException {
    int size = version(iref) == 0 ? 2 : 4;
    for (var reference : boxes.filling(iref.from() + 4, iref.length() - 4)) {
      if (images.containsKey(number(reference, 0, size))) {
        into.bytes(ascii(reference.type()));
        into.part(reference.from(), reference.length());
      }
    }
  }

  private static byte[] ascii(String type) {
    return type.getBytes(StandardCharsets.ISO_8859_1);
  }
}
