package org.framewright.frames;

import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Optional;

/**
 * The small previews that frames carry in their files, turned upright by Exif Orientation. Raws,
 * HEIF and CR3 give the smallest of their embedded JPEGs that is large enough; where none is, the
 * largest. A JPEG without a thumbnail that is large enough gives itself, if it is no larger than
 * {@link #LARGEST_WHOLE}. Nothing of more than {@link DecodablePicture#MOST_PIXELS} pixels is
 * decoded, and nothing at full size: rows and columns are left out while decoding.
 *
 * <p>Safe for use by several threads; decoding takes milliseconds, so keep it off an interface's
 * thread, and keep what is shown.
 */
public final class Thumbnails {
  private static final long LARGEST_WHOLE = 8L << 20;

  private Thumbnails() {}

  /**
   * The preview of a frame, at most {@code maxEdge} pixels wide and high; none if none of its files
   * has one that can be decoded.
   */
  public static Optional<BufferedImage> of(Frame frame, int maxEdge) {
    // The JPEG beside a raw is the cheaper one to open, and shows the same.
    return frame.files().stream()
        .filter(file -> file.role().isPicture())
        .sorted(Comparator.comparingInt(file -> file.role() == FileRole.JPEG ? 0 : 1))
        .flatMap(file -> of(file.path(), maxEdge).stream())
        .findFirst();
  }

  /** The preview of one file, as for a frame; none also where the file cannot be read. */
  public static Optional<BufferedImage> of(Path file, int maxEdge) {
    if (maxEdge < 1) {
      throw new IllegalArgumentException("a picture of at most " + maxEdge + " pixels");
    }
    try {
      return decode(file, maxEdge);
    } catch (IOException | RuntimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<BufferedImage> decode(Path path, int maxEdge) throws IOException {
    try (var file = Bytes.open(path)) {
      var contents = Contents.of(file);
      var candidates = DecodablePicture.inside(contents);
      if (JpegReader.claims(file) && file.size() <= LARGEST_WHOLE) {
        DecodablePicture.of(Preview.jpeg(file)).ifPresent(candidates::add);
      }
      for (var picture : DecodablePicture.inOrder(candidates, maxEdge)) {
        var image = picture.decode(maxEdge);
        if (image.isPresent()) {
          return image.map(found -> Upright.turned(fit(found, maxEdge), contents.orientation()));
        }
      }
      return Optional.empty();
    }
  }

  private static BufferedImage fit(BufferedImage image, int maxEdge) {
    int edge = Math.max(image.getWidth(), image.getHeight());
    double scale = Math.min(1, (double) maxEdge / edge);
    int width = Math.max(1, (int) Math.round(image.getWidth() * scale));
    int height = Math.max(1, (int) Math.round(image.getHeight() * scale));
    return Upright.draw(image, width, height, AffineTransform.getScaleInstance(scale, scale));
  }
}
