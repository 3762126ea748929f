package org.framewright.frames;

import java.io.IOException;
import java.util.Optional;
import org.framewright.base.Text;

/** The header of a WebP (RFC 9649): the canvas of VP8X, else the first picture's own size. */
final class WebpHeader {
  private static final int CHUNKS = 12;
  private static final int MOST_CHUNKS = 4096;
  private static final int ALPHA = 0x10;
  private static final int SIDE = 0x3FFF;

  private WebpHeader() {}

  static PictureHeader read(Bytes file) throws IOException {
    var profile = Optional.<PictureHeader.Profile>empty();
    PictureHeader.Size size = null;
    boolean alpha = false;
    long at = CHUNKS;
    for (int i = 0; i < MOST_CHUNKS && file.holds(at, 8); i++) {
      var data = file.slice(at + 8, file.u32(at + 4, false));
      switch (file.ascii(at, 4)) {
        case "VP8X" -> {
          size = PictureHeader.size(u24(data, 4) + 1, u24(data, 7) + 1, false);
          alpha |= (data.u8(0) & ALPHA) != 0;
        }
        case "VP8 " -> {
          if (size == null) {
            size = PictureHeader.size(data.u16(6, false) & SIDE, data.u16(8, false) & SIDE, false);
          }
        }
        case "VP8L" -> {
          long bits = data.u32(1, false);
          if (size == null) {
            size = PictureHeader.size((bits & SIDE) + 1, (bits >> 14 & SIDE) + 1, false);
          }
          alpha |= (bits >> 28 & 1) == 1;
        }
        case "ICCP" -> profile = Optional.of(IccProfile.of(data));
        default -> {}
      }
      at += 8 + data.size() + data.size() % 2;
    }
    if (size == null) {
      throw new Malformed(Text.of("its header describes no picture"));
    }
    return new PictureHeader(
        PictureHeader.Kind.WEBP,
        size,
        new PictureHeader.Colour(PictureHeader.Model.RGB, 8, alpha ? 1 : 0),
        0,
        1,
        profile,
        Optional.empty(),
        file.size());
  }

  private static long u24(Bytes from, long at) throws IOException {
    return from.u16(at, false) | (long) from.u8(at + 2) << 16;
  }
}
