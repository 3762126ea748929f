package org.framewright.frames;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Optional;

/**
 * The header of a TIFF 6.0 or BigTIFF file: its first directory that is of a whole picture. Layers
 * lie in a field of its own (Adobe, "Photoshop TIFF Technical Notes", 2002).
 */
final class TiffHeader {
  private static final int SUBFILE_TYPE = 0x00FE;
  private static final int WIDTH = 0x0100;
  private static final int HEIGHT = 0x0101;
  private static final int BITS = 0x0102;
  private static final int PHOTOMETRIC = 0x0106;
  private static final int ORIENTATION = 0x0112;
  private static final int SAMPLES = 0x0115;
  private static final int EXTRA_SAMPLES = 0x0152;
  private static final int PROFILE = 0x8773;
  private static final int LAYERS = 0x935C;
  private static final int DNG_VERSION = 0xC612;

  /** A picture of a sensor, TIFF/EP and DNG. */
  private static final long SENSOR = 32803;

  private static final long LINEAR = 34892;

  private static final int REDUCED = 1;
  private static final int MASK = 4;
  private static final int MOST_DIRECTORIES = 1024;
  private static final int PLAIN = 42;

  private static final String LAYER_DATA = "Adobe Photoshop Document Data Block\0";

  private TiffHeader() {}

  /** Nothing where it is a raw. */
  static Optional<PictureHeader> read(Bytes file) throws IOException {
    var directory = TiffFields.first(file);
    if (directory.has(DNG_VERSION) || isRaw(file, directory)) {
      return Optional.empty();
    }
    TiffFields whole = null;
    int pages = 0;
    var seen = new HashSet<Long>();
    while (true) {
      long use = directory.number(SUBFILE_TYPE, 0);
      if ((use & (REDUCED | MASK)) == 0) {
        pages++;
        whole = whole == null ? directory : whole;
      }
      if (directory.next() == 0 || seen.size() >= MOST_DIRECTORIES || !seen.add(directory.next())) {
        break;
      }
      directory = directory.at(directory.next());
    }
    return whole == null ? Optional.empty() : Optional.of(header(file, whole, pages));
  }

  private static boolean isRaw(Bytes file, TiffFields first) throws IOException {
    long shown = first.number(PHOTOMETRIC, -1);
    boolean plain = first.isBig() || file.u16(2, first.isBigEndian()) == PLAIN;
    return !plain || shown == SENSOR || shown == LINEAR;
  }

  private static PictureHeader header(Bytes file, TiffFields fields, int pages) throws IOException {
    var model = model(fields.number(PHOTOMETRIC, -1));
    long samples = fields.number(SAMPLES, 1);
    long extra =
        fields.has(EXTRA_SAMPLES)
            ? fields.count(EXTRA_SAMPLES)
            : Math.max(0, samples - model.channels());
    var profile = fields.bytes(PROFILE);
    return new PictureHeader(
        fields.isBig() ? PictureHeader.Kind.BIGTIFF : PictureHeader.Kind.TIFF,
        PictureHeader.size(
            fields.number(WIDTH, 0), fields.number(HEIGHT, 0), fields.number(ORIENTATION, 1) >= 5),
        new PictureHeader.Colour(
            model,
            (int) Arrays.stream(fields.numbers(BITS)).max().orElse(1),
            (int) Math.min(extra, samples)),
        fields.has(LAYERS) ? layers(fields.bytes(LAYERS).orElseThrow()) : 0,
        pages,
        profile.isPresent() ? Optional.of(IccProfile.of(profile.get())) : Optional.empty(),
        fields.resolution(),
        file.size());
  }

  private static PictureHeader.Model model(long shown) {
    return switch ((int) shown) {
      case 0, 1 -> PictureHeader.Model.GREY;
      case 2, 6 -> PictureHeader.Model.RGB;
      case 3 -> PictureHeader.Model.INDEXED;
      case 5 -> PictureHeader.Model.CMYK;
      case 8, 9, 10 -> PictureHeader.Model.LAB;
      default -> PictureHeader.Model.OTHER;
    };
  }

  /** What a writer of little-endian files puts there is turned round, its words too. */
  private static int layers(Bytes data) throws IOException {
    if (!data.startsWith(LAYER_DATA)) {
      return 0;
    }
    var blocks = data.slice(LAYER_DATA.length(), data.size() - LAYER_DATA.length());
    boolean bigEndian = blocks.startsWith("8B");
    return PsdLayers.in(blocks, bigEndian, _ -> false);
  }
}
