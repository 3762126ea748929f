package org.framewright.frames;

import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;

/**
 * A picture inside a file, of which it is known before it is decoded how large it is.
 *
 * @param width in pixels, as it is stored
 * @param height in pixels, as it is stored
 */
record DecodablePicture(Preview preview, int width, int height, boolean progressive) {
  /** A larger one is not decoded. */
  static final long MOST_PIXELS = 120_000_000;

  /** A progressive JPEG is held whole, in coefficients, while it is decoded. */
  private static final long MOST_PROGRESSIVE = 16_000_000;

  /** Previews that are tried until one can be decoded. */
  private static final int MOST_TRIED = 4;

  static Optional<DecodablePicture> of(Preview preview) throws IOException {
    if (preview.rgb()) {
      return Optional.of(new DecodablePicture(preview, preview.width(), preview.height(), false));
    }
    return JpegReader.dimensions(preview.data())
        .map(
            size -> new DecodablePicture(preview, size.width(), size.height(), size.progressive()));
  }

  /** Those that a file has inside. */
  static List<DecodablePicture> inside(Contents contents) throws IOException {
    var pictures = new ArrayList<DecodablePicture>();
    for (var preview : contents.previews()) {
      of(preview).ifPresent(pictures::add);
    }
    return pictures;
  }

  /**
   * Those to try: first the smallest that is as large as that, upward; then the others, largest
   * first. What cannot be borne is left out.
   */
  static List<DecodablePicture> inOrder(List<DecodablePicture> candidates, int edge) {
    return candidates.stream()
        .filter(DecodablePicture::isBearable)
        .sorted(
            Comparator.comparing((DecodablePicture one) -> one.edge() < edge)
                .thenComparingInt(one -> one.edge() < edge ? -one.edge() : one.edge()))
        .limit(MOST_TRIED)
        .toList();
  }

  boolean isBearable() {
    return (long) width * height <= (progressive ? MOST_PROGRESSIVE : MOST_PIXELS);
  }

  int edge() {
    return Math.max(width, height);
  }

  /** The whole picture, rows and columns left out so that it is not much larger than asked for. */
  Optional<BufferedImage> decode(int maxEdge) throws IOException {
    if (preview.data().size() > Bytes.MOST_AT_ONCE) {
      return Optional.empty();
    }
    if (preview.rgb()) {
      return Optional.of(rows());
    }
    int leaveOut = Math.max(1, edge() / maxEdge);
    return jpeg(how -> how.setSourceSubsampling(leaveOut, leaveOut, 0, 0));
  }

  /** A part of the picture as it is stored, at full size. */
  Optional<BufferedImage> decode(Rectangle part) throws IOException {
    return preview.rgb()
        ? Optional.of(rows().getSubimage(part.x, part.y, part.width, part.height))
        : jpeg(how -> how.setSourceRegion(part));
  }

  /**
   * The whole picture as its file has it, without its colours being made out: the first band of a
   * JPEG is its luminance. Every so many rows and columns one is kept.
   */
  Optional<Raster> raster(int leaveOut) throws IOException {
    return preview.rgb()
        ? Optional.of(rows().getRaster())
        : jpeg(
            how -> how.setSourceSubsampling(leaveOut, leaveOut, 0, 0),
            (reader, how) -> reader.readRaster(0, how));
  }

  private BufferedImage rows() throws IOException {
    byte[] data = preview.data().read(0, (int) preview.data().size());
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0, at = 0; y < height; y++) {
      for (int x = 0; x < width; x++, at += 3) {
        image.setRGB(
            x, y, ((data[at] & 0xFF) << 16) | ((data[at + 1] & 0xFF) << 8) | (data[at + 2] & 0xFF));
      }
    }
    return image;
  }

  @FunctionalInterface
  private interface How {
    void set(ImageReadParam how);
  }

  @FunctionalInterface
  private interface What<T> {
    T read(ImageReader reader, ImageReadParam how) throws IOException;
  }

  private Optional<BufferedImage> jpeg(How how) {
    return jpeg(how, (reader, parameters) -> reader.read(0, parameters));
  }

  private <T> Optional<T> jpeg(How how, What<T> what) {
    var reader = ImageIO.getImageReadersByFormatName("jpeg").next();
    try (var input = new BytesInput(preview.data())) {
      reader.setInput(input, true, true);
      var parameters = reader.getDefaultReadParam();
      how.set(parameters);
      return Optional.of(what.read(reader, parameters));
    } catch (IOException | RuntimeException e) {
      // The decoder refuses it: one picture less.
      return Optional.empty();
    } finally {
      reader.dispose();
    }
  }
}
