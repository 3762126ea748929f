package org.framewright.frames;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.framewright.base.Text;
import org.framewright.frames.IsoReader.Box;

/**
 * When and by which body a clip was filmed. The movie's header has a time of its own, in seconds
 * since 1904 (ISO/IEC 14496-12: in UTC), which many bodies write in local time; so what bodies say
 * besides counts first: Exif in a JPEG or in boxes of their own; the items of "QuickTime File
 * Format" (Apple), with the time's offset; the XML of professional disc bodies ({@code
 * NonRealTimeMeta}, common practice, no source); fields like those of Exif in a box NCTG (layout as
 * published by open-source readers).
 */
final class ClipReader {
  private static final long FROM_1904_TO_1970 = 2_082_844_800L;
  private static final String KEYS = "com.apple.quicktime.";
  private static final int LONGEST = 256;
  private static final int LONGEST_XML = 1 << 20;
  private static final int MOST_FIELDS = 512;
  private static final int MOST_ELEMENTS = 10_000;

  private static final int MAKE = 1;
  private static final int MODEL = 2;
  private static final int ORIGINAL = 0x12;
  private static final int ASCII = 2;

  /** Bytes of each type of Exif. */
  private static final int[] TYPE_SIZES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8};

  private static final DateTimeFormatter ISO =
      new DateTimeFormatterBuilder()
          .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
          .optionalStart()
          .appendOffset("+HH:MM", "Z")
          .optionalEnd()
          .optionalStart()
          .appendOffset("+HHMM", "Z")
          .optionalEnd()
          .toFormatter();

  private final Contents contents;
  private final IsoReader boxes;
  private Capture items = Capture.UNKNOWN;
  private Capture fields = Capture.UNKNOWN;
  private Capture xml = Capture.UNKNOWN;
  private Capture header = Capture.UNKNOWN;

  ClipReader(Contents contents, IsoReader boxes) {
    this.contents = contents;
    this.boxes = boxes;
  }

  /** What was found, the most trusted first. */
  void finish() {
    contents.said(items.or(xml).or(fields).or(header));
  }

  /** A box inside of {@code moov}; one that is broken costs what it says, not the clip. */
  void inMovie(Box box) throws IOException {
    try {
      switch (box.type()) {
        case "mvhd" -> header = header(box.content());
        case "udta" -> userData(box.content());
        case "meta" -> items(box.content());
        default -> {}
      }
    } catch (Malformed e) {
      return;
    }
  }

  private static Capture header(Bytes box) throws IOException {
    boolean wide = box.u8(0) == 1;
    long seconds = wide ? box.u64(4, true) : box.u32(4, true);
    // Some bodies count from 1970.
    long since1970 = seconds < FROM_1904_TO_1970 ? seconds : seconds - FROM_1904_TO_1970;
    return dated(CiffReader.time(since1970), Optional.of(ZoneOffset.UTC));
  }

  private void userData(Bytes box) throws IOException {
    var make = "";
    var model = "";
    for (var inner : boxes.inside(box)) {
      switch (inner.type()) {
        case "\u00A9day" -> items = items.or(dated(string(inner.content())));
        case "\u00A9mak" -> make = string(inner.content());
        case "\u00A9mod", "\u00A9mdl" -> model = string(inner.content());
        case "CNTH" -> {
          for (var part : boxes.inside(inner.content())) {
            if (part.type().equals("CNDA")) {
              JpegReader.exifOf(part.content(), contents);
            }
          }
        }
        case "NCDT" -> {
          for (var part : boxes.inside(inner.content())) {
            if (part.type().equals("NCTG")) {
              fields = fields.or(fields(part.content()));
            }
          }
        }
        default -> {}
      }
    }
    items = items.or(body(make, model, ""));
  }

  /** A text with its length and language before it. */
  private static String string(Bytes box) throws IOException {
    int length = Math.min(LONGEST, box.u16(0, true));
    return new String(box.read(4, length), StandardCharsets.UTF_8).strip();
  }

  /** Keys by name, and their values by the number of the key. */
  private void items(Bytes box) throws IOException {
    var names = List.<String>of();
    for (var inner : boxes.inside(IsoReader.insideOfMeta(box))) {
      switch (inner.type()) {
        case "keys" -> names = keys(inner.content());
        case "ilst" -> values(inner.content(), names);
        default -> {}
      }
    }
  }

  private static List<String> keys(Bytes box) throws IOException {
    var names = new ArrayList<String>();
    long at = 8;
    for (long i = 0; i < Math.min(MOST_FIELDS, box.u32(4, true)); i++) {
      long size = box.u32(at, true);
      if (size < 8) {
        throw new Malformed(Text.of("a key at byte {0} claims a size below its header's", at));
      }
      names.add(box.ascii(at + 8, (int) Math.min(LONGEST, size - 8)));
      at += size;
    }
    return names;
  }

  private void values(Bytes box, List<String> names) throws IOException {
    var make = "";
    var model = "";
    long at = 0;
    for (int i = 0; i < MOST_FIELDS && box.holds(at, 8); i++) {
      long size = Math.max(8, box.u32(at, true));
      long index = box.u32(at + 4, true);
      var name = index >= 1 && index <= names.size() ? names.get((int) index - 1) : "";
      // A value is a box "data" with its type and language before it.
      if (name.startsWith(KEYS) && size >= 24 && box.holds(at, size)) {
        var text =
            new String(
                box.read(at + 24, (int) Math.min(LONGEST, size - 24)), StandardCharsets.UTF_8);
        switch (name.substring(KEYS.length())) {
          case "creationdate" -> items = dated(text).or(items);
          case "make" -> make = text;
          case "model" -> model = text;
          default -> {}
        }
      }
      at += size;
    }
    items = items.or(body(make, model, ""));
  }

  private static Capture fields(Bytes box) throws IOException {
    var make = "";
    var model = "";
    var time = Optional.<LocalDateTime>empty();
    long at = 0;
    for (int i = 0; i < MOST_FIELDS && box.holds(at, 8); i++) {
      int type = box.u16(at + 4, true);
      long size = (long) box.u16(at + 6, true) * (type < TYPE_SIZES.length ? TYPE_SIZES[type] : 0);
      if (type == ASCII && box.holds(at + 8, size)) {
        var text = box.ascii(at + 8, (int) size).replace('\0', ' ').strip();
        switch ((int) box.u32(at, true)) {
          case MAKE -> make = text;
          case MODEL -> model = text;
          case ORIGINAL -> time = ExifReader.time(text);
          default -> {}
        }
      }
      at += 8 + size;
    }
    return dated(time, Optional.empty()).or(body(make, model, ""));
  }

  /** What a body wrote about the clip as XML. */
  void xml(Bytes box) throws IOException {
    if (box.size() <= 4 || box.size() > LONGEST_XML) {
      return;
    }
    var text = new String(box.read(4, (int) box.size() - 4), StandardCharsets.UTF_8);
    try {
      xml = nonRealTime(text.replace('\0', ' ').strip());
    } catch (XMLStreamException | RuntimeException e) {
      // A clip is whole without the remarks inside it.
      xml = Capture.UNKNOWN;
    }
  }

  private static Capture nonRealTime(String text) throws XMLStreamException {
    var factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    var xml = factory.createXMLStreamReader(new StringReader(text));
    var said = Capture.UNKNOWN;
    for (int i = 0; i < MOST_ELEMENTS && xml.hasNext(); ) {
      if (xml.next() != XMLStreamConstants.START_ELEMENT) {
        continue;
      }
      i++;
      switch (xml.getLocalName()) {
        case "CreationDate" -> said = said.or(dated(attribute(xml, "value")));
        case "Device" ->
            said =
                said.or(
                    body(
                        attribute(xml, "manufacturer"),
                        attribute(xml, "modelName"),
                        attribute(xml, "serialNo")));
        default -> {}
      }
    }
    return said;
  }

  private static String attribute(XMLStreamReader xml, String name) {
    return Optional.ofNullable(xml.getAttributeValue(null, name)).orElse("").strip();
  }

  /** A time as ISO 8601 writes it, with an offset or without. */
  static Capture dated(String text) {
    try {
      var time = ISO.parseBest(text.strip(), OffsetDateTime::from, LocalDateTime::from);
      return time instanceof OffsetDateTime known
          ? dated(Optional.of(known.toLocalDateTime()), Optional.of(known.getOffset()))
          : dated(Optional.of((LocalDateTime) time), Optional.empty());
    } catch (DateTimeException e) {
      return Capture.UNKNOWN;
    }
  }

  private static Capture dated(Optional<LocalDateTime> time, Optional<ZoneOffset> offset) {
    return new Capture(time, time.flatMap(_ -> offset), Optional.empty(), OptionalInt.empty());
  }

  private static Capture body(String make, String model, String serial) {
    return (make + model + serial).isBlank()
        ? Capture.UNKNOWN
        : new Capture(
            Optional.empty(),
            Optional.empty(),
            Optional.of(new Camera(make.strip(), model.strip(), serial.strip())),
            OptionalInt.empty());
  }
}
