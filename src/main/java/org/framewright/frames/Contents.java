package org.framewright.frames;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * What a container holds that matters here, gathered by the reader of its kind: the blocks of Exif,
 * the previews, an XMP packet, and what is wrong with it. What was found before a fault stays.
 */
final class Contents {
  private static final int MOST_PREVIEWS = 32;

  /** Real files have three. */
  private static final int MOST_EXIF = 16;

  private static final int HEAD = 16;

  private final List<Bytes> exif = new ArrayList<>();
  private final List<Preview> previews = new ArrayList<>();
  private final List<Text> faults = new ArrayList<>();
  private final List<Text> doubts = new ArrayList<>();
  private Capture said = Capture.UNKNOWN;
  private Bytes xmp;
  private boolean hollow;
  private Text lack;
  private int orientation = 1;

  /** Reads a file's structure, whatever kind it is by its first bytes. */
  static Contents of(Bytes file) throws IOException {
    var contents = new Contents();
    try {
      if (file.size() == 0) {
        contents.fault(Text.of("it is empty"));
      } else if (JpegReader.claims(file)) {
        JpegReader.read(file, contents);
      } else if (TiffReader.claims(file)) {
        TiffReader.read(file, contents);
      } else if (IsoReader.claims(file)) {
        IsoReader.read(file, contents);
      } else if (RafReader.claims(file)) {
        RafReader.read(file, contents);
      } else if (PngReader.claims(file)) {
        PngReader.read(file, contents);
      } else if (CiffReader.claims(file)) {
        CiffReader.read(file, contents);
      } else if (MrwReader.claims(file)) {
        MrwReader.read(file, contents);
      } else if (X3fReader.claims(file)) {
        X3fReader.read(file, contents);
      } else if (MxfReader.claims(file)) {
        MxfReader.read(file, contents);
      } else if (AviReader.claims(file)) {
        AviReader.read(file, contents);
      } else {
        contents.unknown(file);
      }
    } catch (Malformed e) {
      contents.fault(e.said());
    }
    return contents;
  }

  private void unknown(Bytes file) throws IOException {
    if (file.isZero(0, (int) Math.min(HEAD, file.size()))) {
      fault(Text.of("its beginning is empty"));
    } else {
      doubt(Text.of("its first bytes are those of no picture that is known here"));
    }
    TiffReader.noteIfHollow(file, this);
  }

  /** A block of Exif in TIFF form. */
  void exif(Bytes tiff) {
    if (exif.size() < MOST_EXIF) {
      exif.add(tiff);
    }
  }

  /** A block of Exif inside a file of another kind, with the previews and the orientation in it. */
  void exifWithPreviews(Bytes tiff) throws IOException {
    if (exif.size() < MOST_EXIF) {
      exif.add(tiff);
      TiffReader.readPreviews(tiff, this);
    }
  }

  void preview(Preview preview) {
    if (previews.size() < MOST_PREVIEWS) {
      previews.add(preview);
    }
  }

  void xmp(Bytes packet) {
    if (xmp == null) {
      xmp = packet;
    }
  }

  void fault(Text why) {
    faults.add(why);
  }

  /** A fault of a file whose ending promises a container that is known here. */
  void doubt(Text why) {
    doubts.add(why);
  }

  /**
   * What the container says of the capture besides its Exif; of several, the first that says it.
   */
  void said(Capture more) {
    said = said.or(more);
  }

  /**
   * It may yet be written: its end holds nothing but zeros, as in a file whose room was taken
   * before, or something of its description lies behind its end.
   */
  void hollow() {
    hollow = true;
  }

  /** Something of its description lies behind its end: it may yet be written, or was cut. */
  void lack(Text what) {
    hollow = true;
    lack = what;
  }

  /** What lies behind its end, where it is not the picture itself. */
  Optional<Text> lacking() {
    return Optional.ofNullable(lack);
  }

  /** The way up, by Exif Orientation: 1 to 8. */
  void orientation(int value) {
    if (value >= 1 && value <= 8) {
      orientation = value;
    }
  }

  int orientation() {
    return orientation;
  }

  List<Bytes> exif() {
    return exif;
  }

  List<Preview> previews() {
    return previews;
  }

  Optional<Bytes> xmp() {
    return Optional.ofNullable(xmp);
  }

  Capture said() {
    return said;
  }

  Optional<Text> fault() {
    return certainFault().or(() -> doubts.stream().findFirst());
  }

  /** A fault also where the file's ending allows a container that is not known here. */
  Optional<Text> certainFault() {
    return faults.stream().findFirst();
  }

  boolean isHollow() {
    return hollow;
  }
}
