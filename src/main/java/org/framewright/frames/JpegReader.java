package org.framewright.frames;

import java.io.IOException;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * JPEG (ITU-T T.81, annex B): segments up to the start of the scan, then coded data in which every
 * FF is followed by 00 or a restart marker, then EOI. So a file that was cut anywhere has no EOI.
 */
final class JpegReader {
  private static final int SOI = 0xD8;
  private static final int EOI = 0xD9;
  private static final int SOS = 0xDA;
  private static final int APP1 = 0xE1;
  private static final int TEM = 0x01;

  private static final String EXIF = "Exif\0\0";
  private static final String XMP = "http://ns.adobe.com/xap/1.0/\0";

  /** How much coded data is read in search of an end that is not at the end of the file. */
  private static final long MOST_SEARCHED = 256L << 20;

  private JpegReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.holds(0, 3) && file.u16(0, true) == 0xFFD8 && file.u8(2) == 0xFF;
  }

  static void read(Bytes file, Contents contents) throws IOException {
    long scan = readHead(file, contents);
    if (!endsIn(file, scan)) {
      contents.fault(Text.of("it has no end: the JPEG's last bytes are missing"));
    }
  }

  /** Takes a segment that stands before the picture, without its length. */
  @FunctionalInterface
  interface Segments {
    void take(int marker, Bytes segment) throws IOException;
  }

  static long readHead(Bytes file, Contents contents) throws IOException {
    return readHead(file, contents, (_, _) -> {});
  }

  /** Reads the segments; returns where the coded data begin. */
  static long readHead(Bytes file, Contents contents, Segments segments) throws IOException {
    long at = 2;
    while (true) {
      int marker = marker(file, at);
      while (marker == 0xFF) {
        at++;
        marker = marker(file, at);
      }
      if (marker == EOI) {
        throw new Malformed(Text.of("it ends before its picture begins"));
      }
      if (marker == SOI || marker == TEM || isRestart(marker)) {
        at += 2;
        continue;
      }
      int length = file.u16(at + 2, true);
      if (length < 2) {
        throw new Malformed(Text.of("a segment at byte {0} has no length", at));
      }
      var segment = file.slice(at + 4, length - 2L);
      if (marker == SOS) {
        return at + 2 + length;
      }
      if (marker == APP1) {
        app1(segment, contents);
      }
      segments.take(marker, segment);
      at += 2L + length;
    }
  }

  /** Adds the Exif of a JPEG that lies inside another file; whatever is broken is left out. */
  static void exifOf(Bytes jpeg, Contents contents) throws IOException {
    try {
      var inside = new Contents();
      readHead(jpeg, inside);
      inside.exif().forEach(contents::exif);
    } catch (Malformed e) {
      // The file around it is whole without its preview.
      return;
    }
  }

  /** The size of a JPEG's picture in pixels. */
  record Dimensions(int width, int height, boolean progressive) {}

  /**
   * The size that a baseline, extended or progressive frame header (SOF0 to SOF2) gives; none for
   * lossless ones, in which raws keep their sensor data, and for what is no JPEG.
   */
  static Optional<Dimensions> dimensions(Bytes jpeg) throws IOException {
    try {
      long at = 2;
      while (true) {
        int marker = marker(jpeg, at);
        if (marker == 0xFF) {
          at++;
        } else if (marker >= 0xC0 && marker <= 0xC2) {
          int height = jpeg.u16(at + 5, true);
          int width = jpeg.u16(at + 7, true);
          return width > 0 && height > 0
              ? Optional.of(new Dimensions(width, height, marker == 0xC2))
              : Optional.empty();
        } else if (marker == SOS || marker == EOI || marker == 0xC3) {
          return Optional.empty();
        } else if (marker == SOI || marker == TEM || isRestart(marker)) {
          at += 2;
        } else {
          at += 2L + Math.max(2, jpeg.u16(at + 2, true));
        }
      }
    } catch (Malformed e) {
      return Optional.empty();
    }
  }

  private static void app1(Bytes segment, Contents contents) throws IOException {
    if (segment.startsWith(EXIF)) {
      var tiff = segment.slice(EXIF.length(), segment.size() - EXIF.length());
      contents.exifWithPreviews(tiff);
    } else if (segment.startsWith(XMP)) {
      contents.xmp(segment.slice(XMP.length(), segment.size() - XMP.length()));
    }
  }

  private static int marker(Bytes file, long at) throws IOException {
    if (file.u8(at) != 0xFF) {
      throw new Malformed(Text.of("there is no marker at byte {0}, where one belongs", at));
    }
    return file.u8(at + 1);
  }

  /** SOF0 to SOF15, of which three numbers are DHT, JPG and DAC. */
  static boolean isFrameHeader(int marker) {
    return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
  }

  private static boolean isRestart(int marker) {
    return marker >= 0xD0 && marker <= 0xD7;
  }

  /** Whether an EOI follows the coded data: at the very end, or with something else after it. */
  private static boolean endsIn(Bytes file, long scan) throws IOException {
    long size = file.size();
    if (size - scan >= 2 && file.u16(size - 2, true) == 0xFFD9) {
      return true;
    }
    return hasEnd(file, scan);
  }

  private static boolean hasEnd(Bytes file, long scan) throws IOException {
    long limit = Math.min(file.size(), scan + MOST_SEARCHED);
    var search = file.unmetered();
    for (long at = scan; at < limit - 1; at++) {
      if (search.u8(at) != 0xFF) {
        continue;
      }
      int marker = search.u8(at + 1);
      if (marker == EOI) {
        return true;
      }
      if (marker == 0 || isRestart(marker)) {
        at++;
      } else if (marker != 0xFF && at + 3 < limit) {
        at += 1L + Math.max(2, search.u16(at + 2, true));
      }
    }
    return false;
  }
}
