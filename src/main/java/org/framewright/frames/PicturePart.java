package org.framewright.frames;

import java.awt.Rectangle;
import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Optional;

/**
 * A part of a frame's picture at full size, upright: a pixel of the largest picture that its files
 * hold is a pixel of it. Raws give the largest JPEG that the body put in.
 *
 * @param picture the part
 * @param left how many pixels of the whole picture are left of it
 * @param top how many are above it
 * @param fullWidth of the whole picture, in pixels
 * @param fullHeight of the whole picture, in pixels
 */
public record PicturePart(BufferedImage picture, int left, int top, int fullWidth, int fullHeight) {

  /**
   * The part around a point; a part that would reach over the edge lies at it. Decoding takes
   * hundreds of milliseconds: keep it off an interface's thread.
   *
   * @param x where its middle is: 0 at the left edge of the upright picture to 1 at the right
   * @param y 0 at the top to 1 at the bottom
   * @param width at most, in pixels
   * @param height at most, in pixels
   * @return none if none of the frame's files has a picture that can be decoded
   */
  public static Optional<PicturePart> of(Frame frame, double x, double y, int width, int height) {
    if (width < 1 || height < 1) {
      throw new IllegalArgumentException("a part of " + width + " by " + height + " pixels");
    }
    return frame.files().stream()
        .filter(file -> file.role().isPicture())
        .sorted(Comparator.comparingInt(file -> file.role() == FileRole.JPEG ? 0 : 1))
        .flatMap(file -> of(file.path(), x, y, width, height).stream())
        .findFirst();
  }

  private static Optional<PicturePart> of(Path path, double x, double y, int width, int height) {
    try (var file = Bytes.open(path)) {
      var contents = Contents.of(file);
      var pictures = DecodablePicture.inside(contents);
      if (JpegReader.claims(file)) {
        DecodablePicture.of(Preview.jpeg(file)).ifPresent(pictures::add);
      }
      var largest =
          pictures.stream()
              .filter(DecodablePicture::isBearable)
              .max(Comparator.comparingInt(DecodablePicture::edge));
      return largest.isEmpty()
          ? Optional.empty()
          : part(largest.get(), contents.orientation(), x, y, width, height);
    } catch (IOException | RuntimeException e) {
      return Optional.empty();
    }
  }

  /** Decodes a part of a picture as it is stored. */
  @FunctionalInterface
  interface Decoder {
    Optional<BufferedImage> of(Rectangle stored) throws IOException;
  }

  private static Optional<PicturePart> part(
      DecodablePicture whole, int orientation, double x, double y, int width, int height)
      throws IOException {
    return part(whole.width(), whole.height(), orientation, whole::decode, x, y, width, height);
  }

  /** The same of a picture of which only the size, as it is stored, is known. */
  static Optional<PicturePart> part(
      int storedWidth,
      int storedHeight,
      int orientation,
      Decoder decoder,
      double x,
      double y,
      int width,
      int height)
      throws IOException {
    var turn =
        Upright.isTurned(orientation)
            ? Upright.turn(storedWidth, storedHeight, orientation)
            : new AffineTransform();
    var full = turn.createTransformedShape(new Rectangle(storedWidth, storedHeight)).getBounds();
    int partWidth = Math.min(width, full.width);
    int partHeight = Math.min(height, full.height);
    int left = start(x, partWidth, full.width);
    int top = start(y, partHeight, full.height);
    return decoder
        .of(stored(turn, new Rectangle(left, top, partWidth, partHeight)))
        .map(
            picture ->
                new PicturePart(
                    plain(Upright.turned(picture, orientation)),
                    left,
                    top,
                    full.width,
                    full.height));
  }

  private static int start(double middle, int part, int full) {
    return Math.clamp(Math.round(middle * full - part / 2.0), 0, full - part);
  }

  private static Rectangle stored(AffineTransform turn, Rectangle seen) {
    try {
      return turn.createInverse().createTransformedShape(seen).getBounds();
    } catch (NoninvertibleTransformException e) {
      throw new IllegalStateException("a turn that cannot be turned back", e);
    }
  }

  /** In the interface's colours, whatever profile the file has. */
  private static BufferedImage plain(BufferedImage picture) {
    return picture.getType() == BufferedImage.TYPE_INT_RGB
        ? picture
        : Upright.draw(picture, picture.getWidth(), picture.getHeight(), new AffineTransform());
  }
}
