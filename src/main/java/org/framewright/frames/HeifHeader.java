package org.framewright.frames;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.Text;

/**
 * The header of a HEIF or AVIF (ISO/IEC 23008-12): the properties of its primary item. Where it has
 * transparency, this is an item of its own, of which a property says so.
 */
final class HeifHeader {
  private static final Set<String> HEIF = Set.of("heic", "heix", "heim", "heis", "mif1", "msf1");
  private static final Set<String> AVIF = Set.of("avif", "avis");
  private static final String ALPHA = "urn:mpeg:mpegB:cicp:systems:auxiliary:alpha";
  private static final String ALPHA_HEVC = "urn:mpeg:hevc:2015:auxid:1";
  private static final int MOST_ITEMS = 4096;
  private static final int LONGEST_URN = 256;

  private final Bytes file;
  private final IsoBoxes boxes;
  private final List<IsoBoxes.Box> all = new ArrayList<>();

  HeifHeader(Bytes file) {
    this.file = file;
    this.boxes = new IsoBoxes(file);
  }

  static boolean claims(Bytes file) throws IOException {
    if (!file.holds(0, 12) || !file.ascii(4, 4).equals("ftyp")) {
      return false;
    }
    var brand = file.ascii(8, 4);
    return HEIF.contains(brand) || AVIF.contains(brand);
  }

  PictureHeader read() throws IOException {
    long primary = -1;
    IsoBoxes.Box properties = null;
    for (var top : boxes.inside(0, file.size())) {
      if (top.type().equals("meta")) {
        for (var box : boxes.inside(top.from() + 4, top.length() - 4)) {
          switch (box.type()) {
            case "pitm" ->
                primary =
                    file.u8(box.from()) == 0
                        ? file.u16(box.from() + 4, true)
                        : file.u32(box.from() + 4, true);
            case "iprp" -> properties = box;
            default -> {}
          }
        }
      }
    }
    if (primary < 0 || properties == null) {
      throw new Malformed(Text.of("its header describes no picture"));
    }
    return header(ofItem(primary, properties));
  }

  private List<IsoBoxes.Box> ofItem(long item, IsoBoxes.Box properties) throws IOException {
    var own = new ArrayList<IsoBoxes.Box>();
    var inside = boxes.inside(properties.from(), properties.length());
    for (var box : inside) {
      if (box.type().equals("ipco")) {
        all.addAll(boxes.inside(box.from(), box.length()));
      }
    }
    for (var box : inside) {
      if (box.type().equals("ipma")) {
        associated(file.slice(box.from(), box.length()), item, own);
      }
    }
    return own;
  }

  private void associated(Bytes ipma, long item, List<IsoBoxes.Box> own) throws IOException {
    boolean wide = ipma.u8(0) > 0;
    boolean large = (ipma.u8(3) & 1) == 1;
    long count = Math.min(MOST_ITEMS, ipma.u32(4, true));
    long at = 8;
    for (long i = 0; i < count; i++) {
      long id = wide ? ipma.u32(at, true) : ipma.u16(at, true);
      at += wide ? 4 : 2;
      int properties = ipma.u8(at++);
      for (int k = 0; k < properties; k++) {
        int index = large ? ipma.u16(at, true) & 0x7FFF : ipma.u8(at) & 0x7F;
        at += large ? 2 : 1;
        if (id == item && index > 0 && index <= all.size()) {
          own.add(all.get(index - 1));
        }
      }
    }
  }

  private PictureHeader header(List<IsoBoxes.Box> own) throws IOException {
    long width = 0;
    long height = 0;
    boolean turned = false;
    int bits = 8;
    int channels = 3;
    var profile = Optional.<PictureHeader.Profile>empty();
    for (var box : own) {
      var data = file.slice(box.from(), box.length());
      switch (box.type()) {
        case "ispe" -> {
          width = data.u32(4, true);
          height = data.u32(8, true);
        }
        case "irot" -> turned = (data.u8(0) & 1) == 1;
        case "pixi" -> {
          channels = data.u8(4);
          bits = data.u8(5);
        }
        case "colr" -> {
          if (data.startsWith("prof") || data.startsWith("rICC")) {
            profile = Optional.of(IccProfile.of(data.slice(4, data.size() - 4)));
          }
        }
        default -> {}
      }
    }
    return new PictureHeader(
        AVIF.contains(file.ascii(8, 4)) ? PictureHeader.Kind.AVIF : PictureHeader.Kind.HEIF,
        PictureHeader.size(width, height, turned),
        new PictureHeader.Colour(
            channels == 1 ? PictureHeader.Model.GREY : PictureHeader.Model.RGB,
            bits,
            hasAlpha() ? 1 : 0),
        0,
        1,
        profile,
        Optional.empty(),
        file.size());
  }

  private boolean hasAlpha() throws IOException {
    for (var box : all) {
      if (box.type().equals("auxC")) {
        var data = file.slice(box.from(), box.length());
        var urn = data.ascii(4, (int) Math.min(LONGEST_URN, Math.max(0, data.size() - 4)));
        if (urn.startsWith(ALPHA) || urn.startsWith(ALPHA_HEVC)) {
          return true;
        }
      }
    }
    return false;
  }
}
