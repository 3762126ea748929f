package org.framewright.ui;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Rectangle2D;

/** Where windows go among the displays, each given by its bounds. */
final class Displays {
  private Displays() {}

  /** The first display that a window does not lie on, not even in part. */
  static Optional<Rectangle2D> beside(List<Rectangle2D> displays, Rectangle2D window) {
    return displays.stream().filter(display -> !display.intersects(window)).findFirst();
  }

  /**
   * A window's place, brought wholly onto the display that shows most of it; onto the first where
   * none shows any of it, as when a display was taken away. One that is larger than the display is
   * made as large as it.
   */
  static Rectangle2D onto(List<Rectangle2D> displays, Rectangle2D window) {
    var best =
        displays.stream()
            .max(Comparator.comparingDouble(display -> shared(display, window)))
            .filter(display -> shared(display, window) > 0)
            .or(() -> displays.stream().findFirst());
    if (best.isEmpty()) {
      return window;
    }
    var display = best.get();
    var width = Math.min(window.getWidth(), display.getWidth());
    var height = Math.min(window.getHeight(), display.getHeight());
    return new Rectangle2D(
        Math.clamp(window.getMinX(), display.getMinX(), display.getMaxX() - width),
        Math.clamp(window.getMinY(), display.getMinY(), display.getMaxY() - height),
        width,
        height);
  }

  private static double shared(Rectangle2D one, Rectangle2D other) {
    var width = Math.min(one.getMaxX(), other.getMaxX()) - Math.max(one.getMinX(), other.getMinX());
    var height =
        Math.min(one.getMaxY(), other.getMaxY()) - Math.max(one.getMinY(), other.getMinY());
    return Math.max(0, width) * Math.max(0, height);
  }
}
