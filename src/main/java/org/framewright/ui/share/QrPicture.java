package org.framewright.ui.share;

import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.ClosePath;
import javafx.scene.shape.HLineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.VLineTo;
import org.framewright.share.QrCode;

/**
 * A code, black on white in every look: cameras want it so. Each module has the same whole number
 * of pixels, and a margin of four modules stays free (ISO/IEC 18004, 5.3.8).
 */
final class QrPicture extends Region {
  /** The least width with its margin, in pixels. */
  static final int LEAST = 264;

  private final Path modules = new Path();

  QrPicture(QrCode code) {
    int all = code.size() + 2 * QrCode.QUIET;
    int module = Math.ceilDiv(LEAST, all);
    getStyleClass().add("qr-code");
    modules.setFill(Color.BLACK);
    modules.setStroke(null);
    modules.setSmooth(false);
    for (int y = 0; y < code.size(); y++) {
      for (int x = 0; x < code.size(); x++) {
        if (code.module(x, y)) {
          int from = x;
          while (x + 1 < code.size() && code.module(x + 1, y)) {
            x++;
          }
          add(
              (from + QrCode.QUIET) * module,
              (y + QrCode.QUIET) * module,
              (x + 1 - from) * module,
              module);
        }
      }
    }
    modules.setManaged(false);
    getChildren().setAll(modules);
    setMinSize(all * module, all * module);
    setPrefSize(all * module, all * module);
    setMaxSize(all * module, all * module);
  }

  private void add(double x, double y, double width, double height) {
    modules
        .getElements()
        .addAll(
            new MoveTo(x, y),
            new HLineTo(x + width),
            new VLineTo(y + height),
            new HLineTo(x),
            new ClosePath());
  }
}
