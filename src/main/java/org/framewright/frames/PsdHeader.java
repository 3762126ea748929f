package org.framewright.frames;

import java.io.IOException;
import java.util.Optional;
import java.util.Set;

/**
 * The header of a PSD or PSB ("Adobe Photoshop File Formats Specification"): the head of 26 bytes,
 * the resources for profile and resolution, and how many layers there are. With 16 bits a channel
 * these lie in a block behind the masks.
 */
final class PsdHeader {
  private static final int COLOURS = 26;
  private static final int RESOLUTION = 1005;
  private static final int PROFILE = 1039;
  private static final int MOST_RESOURCES = 4096;
  private static final double FIXED = 65_536;

  /** Of which a PSB says the length in eight bytes. */
  private static final Set<String> WIDE =
      Set.of(
          "LMsk", "Lr16", "Lr32", "Layr", "Mt16", "Mt32", "Mtrn", "Alph", "FMsk", "lnk2", "FEid",
          "FXid", "PxSD");

  private PsdHeader() {}

  static PictureHeader read(Bytes file) throws IOException {
    boolean large = file.u16(4, true) == 2;
    int channels = file.u16(12, true);
    var model = model(file.u16(24, true));
    long resources = COLOURS + 4 + file.u32(COLOURS, true);
    long layers = resources + 4 + file.u32(resources, true);
    var found = new Resources();
    found.read(file.slice(resources + 4, file.u32(resources, true)));
    return new PictureHeader(
        large ? PictureHeader.Kind.PSB : PictureHeader.Kind.PSD,
        PictureHeader.size(file.u32(18, true), file.u32(14, true), false),
        new PictureHeader.Colour(
            model,
            file.u16(22, true),
            model == PictureHeader.Model.OTHER
                ? channels
                : Math.max(0, channels - model.channels())),
        layers(file, layers, large),
        1,
        found.profile,
        found.resolution,
        file.size());
  }

  private static PictureHeader.Model model(int mode) {
    return switch (mode) {
      case 0, 1, 8 -> PictureHeader.Model.GREY;
      case 2 -> PictureHeader.Model.INDEXED;
      case 3 -> PictureHeader.Model.RGB;
      case 4 -> PictureHeader.Model.CMYK;
      case 9 -> PictureHeader.Model.LAB;
      default -> PictureHeader.Model.OTHER;
    };
  }

  private static final class Resources {
    private Optional<PictureHeader.Profile> profile = Optional.empty();
    private Optional<PictureHeader.Resolution> resolution = Optional.empty();

    /** Signature, number, a name of even length, length, data of even length. */
    private void read(Bytes all) throws IOException {
      long at = 0;
      for (int i = 0; i < MOST_RESOURCES && all.holds(at, 12); i++) {
        int id = all.u16(at + 4, true);
        long length = at + 6 + (all.u8(at + 6) / 2 + 1) * 2L;
        var data = all.slice(length + 4, all.u32(length, true));
        if (id == PROFILE) {
          profile = Optional.of(IccProfile.of(data));
        } else if (id == RESOLUTION && data.holds(0, 12) && data.u32(0, true) > 0) {
          resolution =
              Optional.of(
                  new PictureHeader.Resolution(
                      data.u32(0, true) / FIXED, data.u32(8, true) / FIXED));
        }
        at = length + 4 + (data.size() + 1) / 2 * 2;
      }
    }
  }

  private static int layers(Bytes file, long at, boolean large) throws IOException {
    int wide = large ? 8 : 4;
    var all = file.slice(at + wide, length(file, at, large));
    if (!all.holds(0, wide)) {
      return 0;
    }
    long info = length(all, 0, large);
    if (info > 0) {
      return PsdLayers.count(all, wide, true);
    }
    if (!all.holds(wide, 4)) {
      return 0;
    }
    long blocks = wide + 4L + all.u32(wide, true);
    return all.holds(blocks, 0)
        ? PsdLayers.in(
            all.slice(blocks, all.size() - blocks), true, key -> large && WIDE.contains(key))
        : 0;
  }

  private static long length(Bytes from, long at, boolean large) throws IOException {
    return large ? from.u64(at, true) : from.u32(at, true);
  }
}
