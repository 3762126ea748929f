package org.framewright.ui.copies;

import javafx.scene.layout.StackPane;
import javafx.scene.shape.SVGPath;

/**
 * How a file stands, as a mark: a cracked frame, not equal, cut through, an empty place, nearly
 * equal, one more, or equal. Its word stands beside it.
 */
final class FileMark extends StackPane {
  private static final double BOX = 18;

  private final SVGPath path = new SVGPath();

  FileMark() {
    getChildren().add(path);
    setMinSize(BOX, BOX);
    setPrefSize(BOX, BOX);
    setMaxSize(BOX, BOX);
  }

  void show(FileLine.State state) {
    path.setContent(
        switch (state) {
          case DAMAGED -> "M3 2 H15 V16 H3 Z M3 10 L7 7 L10 12 L15 8";
          case DIFFERENT -> "M3 6 H15 M3 12 H15 M13 2 L5 16";
          case TROUBLE -> "M3 3 L15 15 M15 3 L3 15";
          case MISSING -> "M2 6 V2 H6 M12 2 H16 V6 M16 12 V16 H12 M6 16 H2 V12";
          case SAME_PICTURE -> "M2 7 C6 2 12 12 16 7 M3 13 H15";
          case EXTRA -> "M9 3 V15 M3 9 H15";
          case IDENTICAL -> "M3 6 H15 M3 12 H15";
        });
    path.getStyleClass().setAll("file-mark", state.word());
  }
}
