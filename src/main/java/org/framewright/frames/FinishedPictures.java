package org.framewright.frames;

import java.awt.Rectangle;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;

/**
 * Pictures as somebody sends them back: whole JPEGs of any size, TIFF and PNG, which carry no small
 * preview. Rows and columns are left out while decoding, nothing of more than {@link
 * DecodablePicture#MOST_PIXELS} pixels is decoded, and no strip or tile of a TIFF that would fill
 * the memory. What cannot be decoded here is shown by its {@link Thumbnails}, if it has some.
 *
 * <p>Safe for use by several threads; keep it off an interface's thread.
 */
public final class FinishedPictures {
  /** So many pixels of a TIFF are held at once, at up to 16 bytes each. */
  private static final long MOST_IN_A_TILE = 16_000_000;

  /** Of a TIFF (TIFF 6.0, section 8): the field of the compression, and what it says of none. */
  private static final int COMPRESSION = 0x0103;

  private static final int PLAIN = 1;
  private static final long MOST_IN_A_BAND = 2_000_000;

  private FinishedPictures() {}

  /** A kind of file, and the reader of the platform for it. */
  private enum Kind {
    JPEG("jpeg"),
    PNG("png"),
    TIFF("tiff");

    private final String reader;

    Kind(String reader) {
      this.reader = reader;
    }

    static Optional<Kind> of(Bytes file) throws IOException {
      if (!file.holds(0, 8)) {
        return Optional.empty();
      }
      if (JpegReader.claims(file)) {
        return Optional.of(JPEG);
      }
      if (PngReader.claims(file)) {
        return Optional.of(PNG);
      }
      var start = file.ascii(0, 2);
      return start.equals("II") || start.equals("MM") ? Optional.of(TIFF) : Optional.empty();
    }
  }

  /** What is done with a file that is open. */
  private interface Use<T> {
    Optional<T> of(ImageReader reader, int width, int height, int orientation, boolean inBands)
        throws IOException;
  }

  /**
   * The picture of a frame, at most {@code maxEdge} pixels wide and high; none if none of its files
   * can be decoded.
   */
  public static Optional<BufferedImage> of(Frame frame, int maxEdge) {
    return pictures(frame).stream()
        .flatMap(
            path ->
                open(path, (in, w, h, turn, bands) -> whole(in, w, h, turn, bands, maxEdge))
                    .stream())
        .findFirst()
        .or(() -> Thumbnails.of(frame, maxEdge));
  }

  /** A part of the picture at full size, as {@link PicturePart#of} says. */
  public static Optional<PicturePart> part(Frame frame, double x, double y, int width, int height) {
    return pictures(frame).stream()
        .flatMap(
            path ->
                open(
                    path,
                    (in, w, h, turn, _) ->
                        PicturePart.part(
                            w, h, turn, stored -> region(in, stored), x, y, width, height))
                    .stream())
        .findFirst()
        .or(() -> PicturePart.of(frame, x, y, width, height));
  }

  /** The JPEG beside a TIFF is the cheaper one to open, and shows the same. */
  private static List<Path> pictures(Frame frame) {
    return frame.files().stream()
        .filter(file -> file.role() == FileRole.JPEG || file.role() == FileRole.OTHER_IMAGE)
        .sorted(Comparator.comparingInt(file -> file.role() == FileRole.JPEG ? 0 : 1))
        .map(FrameFile::path)
        .toList();
  }

  private static <T> Optional<T> open(Path path, Use<T> use) {
    try (var file = Bytes.open(path)) {
      var kind = Kind.of(file);
      if (kind.isEmpty()) {
        return Optional.empty();
      }
      var reader = ImageIO.getImageReadersByFormatName(kind.get().reader).next();
      try (var input = new BytesInput(file.unmetered())) {
        reader.setInput(input, false, true);
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        boolean large =
            kind.get() == Kind.TIFF
                && (long) reader.getTileWidth(0) * reader.getTileHeight(0) > MOST_IN_A_TILE;
        boolean bearable =
            (long) width * height <= DecodablePicture.MOST_PIXELS && (!large || isPlain(file));
        return bearable
            ? use.of(reader, width, height, orientation(file), large)
            : Optional.empty();
      } finally {
        reader.dispose();
      }
    } catch (IOException | RuntimeException e) {
      // The decoder refuses it: one picture less.
      return Optional.empty();
    }
  }

  /** Whether a TIFF is not compressed, so that its rows are read one by one. */
  private static boolean isPlain(Bytes file) throws IOException {
    return TiffFields.first(file).number(COMPRESSION, PLAIN) == PLAIN;
  }

  private static int orientation(Bytes file) {
    try {
      return Contents.of(file).orientation();
    } catch (IOException | RuntimeException e) {
      return 1;
    }
  }

  private static Optional<BufferedImage> whole(
      ImageReader reader, int width, int height, int orientation, boolean inBands, int maxEdge)
      throws IOException {
    int leaveOut = Math.max(1, Math.max(width, height) / maxEdge);
    var read =
        !inBands
            ? some(reader, new Rectangle(width, height), leaveOut)
            : inBands(reader, width, height, leaveOut);
    double scale = Math.min(1, (double) maxEdge / Math.max(read.getWidth(), read.getHeight()));
    var fitted =
        Upright.draw(
            read,
            Math.max(1, (int) Math.round(read.getWidth() * scale)),
            Math.max(1, (int) Math.round(read.getHeight() * scale)),
            AffineTransform.getScaleInstance(scale, scale));
    return Optional.of(Upright.turned(fitted, orientation));
  }

  private static BufferedImage some(ImageReader reader, Rectangle part, int leaveOut)
      throws IOException {
    var how = reader.getDefaultReadParam();
    how.setSourceRegion(part);
    how.setSourceSubsampling(leaveOut, leaveOut, 0, 0);
    return reader.read(0, how);
  }

  /** A picture whose one strip would fill the memory, some rows after the other. */
  private static BufferedImage inBands(ImageReader reader, int width, int height, int leaveOut)
      throws IOException {
    int rows = Math.max(1, (int) (MOST_IN_A_BAND / width / leaveOut)) * leaveOut;
    var whole =
        new BufferedImage(
            Math.ceilDiv(width, leaveOut),
            Math.ceilDiv(height, leaveOut),
            BufferedImage.TYPE_INT_RGB);
    var paint = whole.createGraphics();
    for (int y = 0; y < height; y += rows) {
      var band = new Rectangle(0, y, width, Math.min(rows, height - y));
      paint.drawImage(some(reader, band, leaveOut), 0, y / leaveOut, null);
    }
    paint.dispose();
    return whole;
  }

  private static Optional<BufferedImage> region(ImageReader reader, Rectangle stored)
      throws IOException {
    var how = reader.getDefaultReadParam();
    how.setSourceRegion(stored);
    return Optional.of(reader.read(0, how));
  }
}
