package org.framewright.frames;

import java.io.IOException;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * What makes the picture of a JPEG (ITU-T T.81, annex B): every segment but APPn and COM, every
 * scan, and what follows the end. Of APP14 the colour transform counts and of APP2 the colour
 * profile, since both change the look.
 */
final class JpegPicture {
  private static final int SOI = 0xD8;
  private static final int EOI = 0xD9;
  private static final int SOS = 0xDA;
  private static final int APP0 = 0xE0;
  private static final int APP2 = 0xE2;
  private static final int APP14 = 0xEE;
  private static final int APP15 = 0xEF;
  private static final int COM = 0xFE;
  private static final int TRANSFORM = 11;
  private static final int PIECE = 64 << 10;
  private static final int MOST_SEGMENTS = 1 << 16;

  private JpegPicture() {}

  static Optional<String> digest(Bytes file, PictureDigest.Into into) throws IOException {
    var bytes = file.unmetered();
    long at = 2;
    for (int segments = 0; segments < MOST_SEGMENTS; segments++) {
      if (bytes.u8(at) != 0xFF) {
        return Optional.empty();
      }
      int marker = bytes.u8(at + 1);
      if (marker == 0xFF) {
        at++;
        continue;
      }
      if (marker == EOI) {
        into.part(at + 2, bytes.size() - at - 2);
        return Optional.of("jpeg");
      }
      if (marker == SOI || marker == 0 || marker == 1 || (marker >= 0xD0 && marker <= 0xD7)) {
        return Optional.empty();
      }
      int length = bytes.u16(at + 2, true);
      if (length < 2) {
        return Optional.empty();
      }
      var segment = bytes.slice(at + 4, length - 2L);
      segment(marker, segment, at + 4, into);
      at += 2L + length;
      if (marker == SOS) {
        long end = endOfScan(bytes, at);
        into.data(at, end - at);
        at = end;
      }
    }
    return Optional.empty();
  }

  private static void segment(int marker, Bytes segment, long at, PictureDigest.Into into)
      throws IOException {
    if (marker == APP14) {
      if (segment.startsWith("Adobe") && segment.holds(TRANSFORM, 1)) {
        into.number(marker);
        into.number(segment.u8(TRANSFORM));
      }
      return;
    }
    boolean profile = marker == APP2 && segment.startsWith("ICC_PROFILE\0");
    if ((marker >= APP0 && marker <= APP15 && !profile) || marker == COM) {
      return;
    }
    into.number(marker);
    into.part(at, segment.size());
    if (JpegReader.isFrameHeader(marker)) {
      into.pixels(segment.u16(3, true), segment.u16(1, true));
    }
  }

  /** Where the marker is that ends coded data: FF with neither 00 nor a restart behind it. */
  private static long endOfScan(Bytes file, long from) throws IOException {
    long at = from;
    while (at + 1 < file.size()) {
      int length = (int) Math.min(PIECE, file.size() - at);
      var piece = file.read(at, length);
      for (int i = 0; i + 1 < length; i++) {
        if (piece[i] == (byte) 0xFF) {
          int next = piece[i + 1] & 0xFF;
          if (next != 0 && next != 0xFF && !(next >= 0xD0 && next <= 0xD7)) {
            return at + i;
          }
        }
      }
      at += length - 1;
    }
    throw new Malformed(Text.of("it has no end: the JPEG's last bytes are missing"));
  }
}
