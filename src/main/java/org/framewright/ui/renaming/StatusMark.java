package org.framewright.ui.renaming;

import javafx.scene.layout.StackPane;
import javafx.scene.shape.SVGPath;

/**
 * How a line stands, as a mark: a barrier across the way, an empty line to write on, a way with a
 * gap, an arrow, a stroke, or a level. Its word stands beside it.
 */
final class StatusMark extends StackPane {
  private static final double BOX = 18;

  private final SVGPath path = new SVGPath();

  StatusMark() {
    path.setManaged(true);
    getChildren().add(path);
    setMinSize(BOX, BOX);
    setPrefSize(BOX, BOX);
    setMaxSize(BOX, BOX);
  }

  void show(PlanLine.State state) {
    path.setContent(drawing(state));
    path.getStyleClass().setAll("rename-mark", state.word());
  }

  private static String drawing(PlanLine.State state) {
    return switch (state) {
      case BLOCKED -> "M1 9 H8 M8 2 V16 M12 2 V16";
      case NO_NAME -> "M1 14 H4 M7 14 H10 M13 14 H16";
      case SKIPPED -> "M1 9 H5 M11 9 H16 M12 5 L16 9 L12 13";
      case READY -> "M1 9 H16 M11 4 L16 9 L11 14";
      case DONE -> "M3 15 L14 3";
      case UNCHANGED -> "M3 6 H15 M3 12 H15";
    };
  }
}
