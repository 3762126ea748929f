package org.framewright.frames;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.framewright.base.Text;

/**
 * The header of a PNG (W3C): IHDR, and of what stands before the picture iCCP, sRGB, pHYs, tRNS.
 */
final class PngHeader {
  private static final int SIGNATURE = 8;
  private static final int MOST_CHUNKS = 4096;
  private static final double METRES = 0.0254;

  /** What the profile is called that sRGB stands for: IEC 61966-2-1. */
  private static final String SRGB = "sRGB IEC61966-2.1";

  private final Bytes file;
  private Optional<PictureHeader.Profile> profile = Optional.empty();
  private Optional<PictureHeader.Resolution> resolution = Optional.empty();
  private boolean seeThrough;

  PngHeader(Bytes file) {
    this.file = file;
  }

  PictureHeader read() throws IOException {
    if (!file.ascii(SIGNATURE + 4, 4).equals("IHDR")) {
      throw new Malformed(Text.of("its header describes no picture"));
    }
    var head = file.slice(SIGNATURE + 8, 13);
    int type = head.u8(9);
    chunks();
    var model =
        switch (type) {
          case 0, 4 -> PictureHeader.Model.GREY;
          case 2, 6 -> PictureHeader.Model.RGB;
          case 3 -> PictureHeader.Model.INDEXED;
          default -> throw new Malformed(Text.of("its header describes no picture"));
        };
    return new PictureHeader(
        PictureHeader.Kind.PNG,
        PictureHeader.size(head.u32(0, true), head.u32(4, true), false),
        new PictureHeader.Colour(model, head.u8(8), type == 4 || type == 6 || seeThrough ? 1 : 0),
        0,
        1,
        profile,
        resolution,
        file.size());
  }

  private void chunks() throws IOException {
    long at = SIGNATURE;
    for (int i = 0; i < MOST_CHUNKS; i++) {
      var data = file.slice(at + 8, file.u32(at, true));
      switch (file.ascii(at + 4, 4)) {
        case "IDAT", "IEND" -> {
          return;
        }
        case "iCCP" -> profile = Optional.of(profile(data));
        case "sRGB" -> profile = profile.or(() -> Optional.of(srgb()));
        case "tRNS" -> seeThrough = true;
        case "pHYs" -> {
          if (data.u8(8) == 1) {
            resolution =
                Optional.of(
                    new PictureHeader.Resolution(
                        data.u32(0, true) * METRES, data.u32(4, true) * METRES));
          }
        }
        default -> {}
      }
      at += 12 + data.size();
    }
  }

  private static PictureHeader.Profile srgb() {
    return new PictureHeader.Profile(SRGB, false);
  }

  /** A name, a zero, the way it is packed, and the packed profile. */
  private static PictureHeader.Profile profile(Bytes chunk) throws IOException {
    long at = 0;
    while (at < 80 && chunk.u8(at) != 0) {
      at++;
    }
    long from = at + 2;
    int length = (int) Math.min(Bytes.MOST_AT_ONCE, Math.max(0, chunk.size() - from));
    return IccProfile.of(Bytes.of(unpacked(chunk.read(from, length))));
  }

  private static byte[] unpacked(byte[] packed) throws IOException {
    var inflater = new Inflater();
    try {
      inflater.setInput(packed);
      var all = new ByteArrayOutputStream();
      var piece = new byte[1 << 14];
      int length;
      while (all.size() < IccProfile.MOST && (length = inflater.inflate(piece)) > 0) {
        all.write(piece, 0, length);
      }
      return all.toByteArray();
    } catch (DataFormatException e) {
      return new byte[0];
    } finally {
      inflater.end();
    }
  }
}
