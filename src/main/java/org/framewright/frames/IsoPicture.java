package org.framewright.frames;

import java.io.IOException;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * What makes the picture of a CR3 (ISO/IEC 14496-12; layout as published by open-source readers):
 * all its media data and how its tracks are coded and laid out in them. Of other files of this kind
 * {@link HeifPicture} knows some.
 */
final class IsoPicture {
  private static final int MOST_PIECES = 4096;
  private static final String CR3 = "crx ";

  private final Bytes file;
  private final PictureDigest.Into into;
  private final IsoBoxes boxes;
  private long data = -1;

  private IsoPicture(Bytes file, PictureDigest.Into into) {
    this.file = file;
    this.boxes = new IsoBoxes(file);
    this.into = into;
  }

  static Optional<String> digest(Bytes file, PictureDigest.Into into) throws IOException {
    if (!file.holds(0, 12) || !file.ascii(4, 4).equals("ftyp")) {
      return Optional.empty();
    }
    return file.ascii(8, 4).equals(CR3)
        ? new IsoPicture(file, into).cr3()
        : HeifPicture.digest(file, into);
  }

  private Optional<String> cr3() throws IOException {
    var top = boxes.inside(0, file.size());
    var datas = top.stream().filter(box -> box.type().equals("mdat")).toList();
    if (datas.size() != 1) {
      return Optional.empty();
    }
    data = datas.getFirst().from();
    for (var movie : top) {
      if (movie.type().equals("moov")) {
        for (var track : boxes.inside(movie.from(), movie.length())) {
          if (track.type().equals("trak")) {
            track(track);
          }
        }
      }
    }
    into.data(data, datas.getFirst().length());
    return Optional.of("cr3");
  }

  private void track(IsoBoxes.Box track) throws IOException {
    for (var box : boxes.inside(track.from(), track.length())) {
      switch (box.type()) {
        case "mdia", "minf", "stbl" -> track(box);
        case "tkhd" -> {
          long end = box.from() + box.length();
          into.pixels(file.u32(end - 8, true) >> 16, file.u32(end - 4, true) >> 16);
        }
        case "stsd", "stsz", "stsc" -> {
          into.bytes(box.type().getBytes(java.nio.charset.StandardCharsets.US_ASCII));
          into.part(box.from(), box.length());
        }
        case "co64", "stco" -> offsets(box);
        default -> {}
      }
    }
  }

  private void offsets(IsoBoxes.Box box) throws IOException {
    boolean wide = box.type().equals("co64");
    long count = file.u32(box.from() + 4, true);
    if (count > MOST_PIECES) {
      throw new Malformed(Text.of("a track claims {0} pieces", count));
    }
    for (int i = 0; i < count; i++) {
      long at = box.from() + 8 + (wide ? 8L : 4L) * i;
      into.number((wide ? file.u64(at, true) : file.u32(at, true)) - data);
    }
  }
}
