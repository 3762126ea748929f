package org.framewright.ui.frames;

import javafx.scene.layout.Region;
import javafx.scene.shape.CubicCurveTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;

/**
 * The mark on a select: a loop drawn around the frame by hand, as a grease pencil leaves it on a
 * contact print. It grows with the tile and takes its colour from the stylesheet.
 */
final class GreaseMark extends Region {
  private final Path loop = new Path();

  GreaseMark() {
    loop.getStyleClass().add("grease-mark");
    loop.setManaged(false);
    getChildren().add(loop);
    setMouseTransparent(true);
  }

  @Override
  protected void layoutChildren() {
    var w = getWidth();
    var h = getHeight();
    loop.getElements()
        .setAll(
            new MoveTo(0.30 * w, 0.07 * h),
            new CubicCurveTo(0.62 * w, -0.01 * h, 0.97 * w, 0.10 * h, 0.965 * w, 0.49 * h),
            new CubicCurveTo(0.96 * w, 0.90 * h, 0.66 * w, 0.985 * h, 0.42 * w, 0.96 * h),
            new CubicCurveTo(0.13 * w, 0.93 * h, 0.02 * w, 0.75 * h, 0.035 * w, 0.45 * h),
            new CubicCurveTo(0.05 * w, 0.16 * h, 0.26 * w, 0.02 * h, 0.56 * w, 0.05 * h));
  }
}
