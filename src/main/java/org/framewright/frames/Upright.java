package org.framewright.frames;

import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;

/** Pictures as they are seen, whichever way the body was held. */
final class Upright {
  private Upright() {}

  /** Exif Orientation (CIPA DC-008): where the picture's top left corner lies as it is seen. */
  static BufferedImage turned(BufferedImage image, int orientation) {
    if (!isTurned(orientation)) {
      return image;
    }
    boolean lies = orientation >= 5;
    return draw(
        image,
        lies ? image.getHeight() : image.getWidth(),
        lies ? image.getWidth() : image.getHeight(),
        turn(image.getWidth(), image.getHeight(), orientation));
  }

  static boolean isTurned(int orientation) {
    return orientation >= 2 && orientation <= 8;
  }

  /**
   * How a stored picture is turned.
   *
   * @param w its width as it is stored
   * @param h its height as it is stored
   */
  static AffineTransform turn(double w, double h, int orientation) {
    return switch (orientation) {
      case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
      case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
      case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
      case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
      case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
      case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
      case 8 -> new AffineTransform(0, -1, 1, 0, 0, w);
      default -> new AffineTransform();
    };
  }

  static BufferedImage draw(BufferedImage image, int width, int height, AffineTransform how) {
    var drawn = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    var g = drawn.createGraphics();
    // What is turned only keeps every pixel as it is.
    boolean scales = (how.getType() & AffineTransform.TYPE_MASK_SCALE) != 0;
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION,
        scales
            ? RenderingHints.VALUE_INTERPOLATION_BILINEAR
            : RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR);
    g.drawImage(image, how, null);
    g.dispose();
    return drawn;
  }
}
