package org.framewright.frames;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What makes the picture of a CR3 (ISO/IEC 14496-12; layout as published by open-source readers):
 * all its media data and how its tracks are coded and laid out in them. Other files of this kind
 * have no digest here; in a HEIF what describes a picture moves the picture.
 */
final class IsoPicture {
  private static final int MOST_BOXES = 4096;
  private static final String CR3 = "crx ";

  private record Box(String type, long from, long length) {}

  private final Bytes file;
  private final PictureDigest.Into into;
  private int boxes;
  private long data = -1;

  private IsoPicture(Bytes file, PictureDigest.Into into) {
    this.file = file;
    this.into = into;
  }

  static Optional<String> digest(Bytes file, PictureDigest.Into into) throws IOException {
    return file.holds(0, 12) && file.ascii(4, 8).equals("ftyp" + CR3)
        ? new IsoPicture(file, into).cr3()
        : Optional.empty();
  }

  private Optional<String> cr3() throws IOException {
    var top = inside(0, file.size());
    var datas = top.stream().filter(box -> box.type().equals("mdat")).toList();
    if (datas.size() != 1) {
      return Optional.empty();
    }
    data = datas.getFirst().from();
    for (var movie : top) {
      if (movie.type().equals("moov")) {
        for (var track : inside(movie.from(), movie.length())) {
          if (track.type().equals("trak")) {
            track(track);
          }
        }
      }
    }
    into.data(data, datas.getFirst().length());
    return Optional.of("cr3");
  }

  private void track(Box track) throws IOException {
    for (var box : inside(track.from(), track.length())) {
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

  private void offsets(Box box) throws IOException {
    boolean wide = box.type().equals("co64");
    long count = file.u32(box.from() + 4, true);
    if (count > MOST_BOXES) {
      throw new Malformed("a track claims %d pieces".formatted(count));
    }
    for (int i = 0; i < count; i++) {
      long at = box.from() + 8 + (wide ? 8L : 4L) * i;
      into.number((wide ? file.u64(at, true) : file.u32(at, true)) - data);
    }
  }

  private List<Box> inside(long from, long length) throws IOException {
    var found = new ArrayList<Box>();
    long at = from;
    long end = from + length;
    while (at + 8 <= end) {
      if (++boxes > MOST_BOXES) {
        throw new Malformed("it has more than %d boxes".formatted(MOST_BOXES));
      }
      long size = file.u32(at, true);
      int header = 8;
      if (size == 1) {
        size = file.u64(at + 8, true);
        header = 16;
      } else if (size == 0) {
        size = end - at;
      }
      if (size < header || size > end - at) {
        throw new Malformed("a box at byte %d does not fit".formatted(at));
      }
      found.add(new Box(file.ascii(at + 4, 4), at + header, size - header));
      at += size;
    }
    return found;
  }
}
