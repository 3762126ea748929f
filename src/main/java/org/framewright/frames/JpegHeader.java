package org.framewright.frames;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Optional;
import java.util.TreeMap;
import org.framewright.base.Text;

/**
 * The header of a JPEG: its frame header (ITU-T T.81, B.2.2), the resolution of JFIF or else of
 * Exif, and the profile, which lies in numbered pieces (ICC.1:2022, annex B.4).
 */
final class JpegHeader {
  private static final int APP0 = 0xE0;
  private static final int APP1 = 0xE1;
  private static final int APP2 = 0xE2;
  private static final String EXIF = "Exif\0\0";
  private static final String JFIF = "JFIF\0";
  private static final String PROFILE = "ICC_PROFILE\0";
  private static final double CENTIMETRES = 2.54;

  private final Bytes file;
  private final TreeMap<Integer, Bytes> pieces = new TreeMap<>();
  private int pieceCount;
  private Bytes frame;
  private Optional<PictureHeader.Resolution> jfif = Optional.empty();
  private Optional<PictureHeader.Resolution> exif = Optional.empty();

  JpegHeader(Bytes file) {
    this.file = file;
  }

  PictureHeader read() throws IOException {
    var contents = new Contents();
    JpegReader.readHead(file, contents, this::segment);
    if (frame == null) {
      throw new Malformed(Text.of("its header describes no picture"));
    }
    int components = frame.u8(5);
    var model =
        switch (components) {
          case 1 -> PictureHeader.Model.GREY;
          case 3 -> PictureHeader.Model.RGB;
          case 4 -> PictureHeader.Model.CMYK;
          default -> PictureHeader.Model.OTHER;
        };
    return new PictureHeader(
        PictureHeader.Kind.JPEG,
        PictureHeader.size(frame.u16(3, true), frame.u16(1, true), contents.orientation() >= 5),
        new PictureHeader.Colour(
            model, frame.u8(0), Math.max(0, model.channels() == 0 ? components : 0)),
        0,
        1,
        pieces.isEmpty() ? Optional.empty() : Optional.of(profile()),
        jfif.or(() -> exif),
        file.size());
  }

  private void segment(int marker, Bytes segment) throws IOException {
    if (JpegReader.isFrameHeader(marker) && frame == null) {
      frame = segment;
    } else if (marker == APP0 && segment.startsWith(JFIF) && segment.holds(0, 12)) {
      int unit = segment.u8(7);
      double perInch = unit == 2 ? CENTIMETRES : 1;
      if (jfif.isEmpty() && (unit == 1 || unit == 2)) {
        jfif =
            Optional.of(
                new PictureHeader.Resolution(
                    segment.u16(8, true) * perInch, segment.u16(10, true) * perInch));
      }
    } else if (marker == APP1 && segment.startsWith(EXIF) && exif.isEmpty()) {
      exif = resolution(segment.slice(EXIF.length(), segment.size() - EXIF.length()));
    } else if (marker == APP2 && segment.startsWith(PROFILE) && segment.holds(0, 14)) {
      pieces.putIfAbsent(segment.u8(12), segment.slice(14, segment.size() - 14));
      pieceCount = segment.u8(13);
    }
  }

  private static Optional<PictureHeader.Resolution> resolution(Bytes exif) throws IOException {
    try {
      return TiffReader.claims(exif) ? TiffFields.first(exif).resolution() : Optional.empty();
    } catch (Malformed e) {
      // A picture is whole without it.
      return Optional.empty();
    }
  }

  /** A profile of which a piece is missing says nothing. */
  private PictureHeader.Profile profile() throws IOException {
    var joined = new ByteArrayOutputStream();
    for (var piece : pieces.values()) {
      joined.write(piece.read(0, (int) piece.size()));
    }
    boolean whole = pieces.size() == pieceCount && pieces.firstKey() == 1;
    return whole
        ? IccProfile.of(Bytes.of(joined.toByteArray()))
        : new PictureHeader.Profile("", true);
  }
}
