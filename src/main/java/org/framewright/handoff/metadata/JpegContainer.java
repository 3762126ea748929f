package org.framewright.handoff.metadata;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * A JPEG (ISO/IEC 10918-1, annex B): segments up to the first scan, and the picture. The packet is
 * a segment APP1 of its own (XMP specification part 3, section 1.1.3).
 */
record JpegContainer(
    List<Segment> segments, long size, Optional<byte[]> packet, Optional<byte[]> iim)
    implements Container {
  private static final int APP0 = 0xE0;
  private static final int APP1 = 0xE1;
  private static final int APP2 = 0xE2;
  private static final int APP13 = 0xED;
  private static final int SOS = 0xDA;
  private static final int EOI = 0xD9;
  private static final int MOST_SEGMENTS = 4096;

  /** By the specification; two less than a segment could hold. */
  private static final int LARGEST_PACKET = 65502;

  private static final int PADDING = 2048;
  private static final byte[] XMP = ascii("http://ns.adobe.com/xap/1.0/\0");
  private static final byte[] EXIF = ascii("Exif\0\0");
  private static final byte[] SEVERAL_PICTURES = ascii("MPF\0");
  private static final byte[] RESOURCES = ascii("Photoshop 3.0\0");

  /**
   * A segment, with its marker.
   *
   * @param start its first bytes, as far as they tell what it is
   */
  @SuppressWarnings("ArrayRecordComponent") // Never compared, and nobody else has it.
  record Segment(int marker, long from, long to, byte[] start) {
    boolean is(int of, byte[] name) {
      return marker == of && startsWith(start, name);
    }

    long length() {
      return to - from;
    }
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static boolean startsWith(byte[] bytes, byte[] start) {
    return bytes.length >= start.length
        && Arrays.equals(bytes, 0, start.length, start, 0, start.length);
  }

  static JpegContainer of(Stretch file) throws IOException, NotUsable {
    var segments = new ArrayList<Segment>();
    long at = 2;
    while (true) {
      if (file.u8(at) != 0xFF || segments.size() > MOST_SEGMENTS) {
        throw new NotUsable(Text.of("its parts do not lie where it says"));
      }
      while (file.u8(at + 1) == 0xFF) {
        at++;
      }
      int marker = file.u8(at + 1);
      int length = file.u16(at + 2, true);
      if (length < 2 || marker < 0xC0 || (marker >= 0xD0 && marker <= EOI)) {
        throw new NotUsable(Text.of("its parts do not lie where it says"));
      }
      long to = at + 2 + length;
      segments.add(
          new Segment(marker, at, to, file.bytes(at + 4, Math.min(length - 2, XMP.length))));
      if (marker == SOS) {
        break;
      }
      at = to;
    }
    var packets = segments.stream().filter(segment -> segment.is(APP1, XMP)).toList();
    if (packets.size() > 1) {
      throw new NotUsable(
          Text.of("it has several packets of XMP, and readers do not agree which one holds"));
    }
    Optional<byte[]> packet =
        packets.isEmpty() ? Optional.empty() : Optional.of(body(file, packets.getFirst(), XMP));
    return new JpegContainer(List.copyOf(segments), file.size(), packet, iim(file, segments));
  }

  private static byte[] body(Stretch file, Segment segment, byte[] name)
      throws IOException, NotUsable {
    long from = segment.from() + 4 + name.length;
    return file.bytes(from, segment.to() - from);
  }

  /** The resources may go on from segment to segment. */
  private static Optional<byte[]> iim(Stretch file, List<Segment> segments)
      throws IOException, NotUsable {
    var resources = new ByteArrayOutputStream();
    for (var segment : segments) {
      if (segment.is(APP13, RESOURCES)) {
        resources.writeBytes(body(file, segment, RESOURCES));
      }
    }
    return Iim.inResources(resources.toByteArray());
  }

  /** Whether there are data behind the end of the picture, as bodies put previews there. */
  private boolean hasMore(Path path) throws IOException, NotUsable {
    try (var file = Stretch.of(path)) {
      return hasMore(file, segments.getLast().to());
    }
  }

  private static boolean hasMore(Stretch file, long scan) throws IOException, NotUsable {
    long at = scan;
    while (at + 1 < file.size()) {
      if (file.u8(at) != 0xFF) {
        at++;
        continue;
      }
      int marker = file.u8(at + 1);
      if (marker == EOI) {
        return !isPadding(file, at + 2);
      }
      boolean inTheScan = marker == 0 || (marker >= 0xD0 && marker <= 0xD7);
      at += inTheScan ? 2 : marker == 0xFF ? 1 : 2L + Math.max(2, file.u16(at + 2, true));
    }
    return false;
  }

  private static boolean isPadding(Stretch file, long from) throws IOException, NotUsable {
    for (long at = from; at < file.size(); at++) {
      if (file.u8(at) != 0) {
        return false;
      }
    }
    return true;
  }

  @Override
  public Rewriting with(Packet packet, Path file) throws IOException, NotUsable {
    var old = segments.stream().filter(segment -> segment.is(APP1, XMP)).findFirst();
    int needed = packet.padded(0).length;
    if (needed > LARGEST_PACKET) {
      throw new NotUsable(Text.of("with the job's data its XMP is larger than a JPEG can hold"));
    }
    int head = 4 + XMP.length;
    int before = old.map(segment -> (int) segment.length() - head).orElse(0);
    // Where it fits in the place of the old one, nothing behind it moves.
    boolean fits = needed <= before;
    int room = fits ? before - needed : Math.min(PADDING, LARGEST_PACKET - needed);
    long from = old.map(Segment::from).orElseGet(this::behindTheHead);
    long to = old.map(Segment::to).orElse(from);
    if (!fits && !isBeforeTheList(from) && hasMore(file)) {
      throw new NotUsable(
          Text.of("it has data behind its picture, which would not be found again"));
    }
    return new Rewriting(
        List.of(
            new Rewriting.Piece.Kept(0, from),
            new Rewriting.Piece.Put(segment(packet.padded(room))),
            new Rewriting.Piece.Kept(to, size)));
  }

  /** Behind the segments that readers want first. */
  private long behindTheHead() {
    long at = 2;
    for (var segment : segments) {
      if (segment.marker() != APP0 && !segment.is(APP1, EXIF)) {
        break;
      }
      at = segment.to();
    }
    return at;
  }

  /**
   * Whether a list says where the data behind the picture are, counted from itself, and comes later
   * (CIPA DC-007, section 5.2.2).
   */
  private boolean isBeforeTheList(long at) {
    return segments.stream()
        .anyMatch(segment -> segment.is(APP2, SEVERAL_PICTURES) && segment.from() >= at);
  }

  private static byte[] segment(byte[] packet) {
    int length = 2 + XMP.length + packet.length;
    var segment = new ByteArrayOutputStream(length + 2);
    segment.writeBytes(new byte[] {(byte) 0xFF, (byte) APP1, (byte) (length >> 8), (byte) length});
    segment.writeBytes(XMP);
    segment.writeBytes(packet);
    return segment.toByteArray();
  }
}
