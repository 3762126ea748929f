package org.framewright.ui.frames;

import java.util.OptionalInt;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;

/** A rating as strokes, as one counts by hand: four upright, the fifth across them. */
final class TallyStrokes extends Region {
  private static final int UPRIGHT = 4;
  private int strokes;

  TallyStrokes() {
    getStyleClass().add("tally-strokes");
    setMouseTransparent(true);
    show(OptionalInt.empty());
  }

  /** Shows a rating; nothing is seen of a frame that is not rated, or that its files reject. */
  void show(OptionalInt rating) {
    strokes = Math.max(0, rating.orElse(0));
    setVisible(strokes > 0);
    setManaged(strokes > 0);
    while (getChildren().size() < strokes) {
      var line = new Line();
      line.getStyleClass().add("tally-stroke");
      line.setManaged(false);
      getChildren().add(line);
    }
    getChildren().remove(strokes, getChildren().size());
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    double step = getWidth() / UPRIGHT;
    for (int i = 0; i < strokes; i++) {
      var line = (Line) getChildren().get(i);
      if (i < UPRIGHT) {
        // Leaning a little, as a hand draws them.
        line.setStartX((i + 0.65) * step);
        line.setStartY(1);
        line.setEndX((i + 0.35) * step);
        line.setEndY(getHeight() - 1);
      } else {
        line.setStartX(0);
        line.setStartY(getHeight() - 2);
        line.setEndX(getWidth());
        line.setEndY(2);
      }
    }
  }
}
