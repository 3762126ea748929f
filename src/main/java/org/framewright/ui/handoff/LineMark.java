package org.framewright.ui.handoff;

import javafx.scene.layout.StackPane;
import javafx.scene.shape.SVGPath;

/** How a line stands, as a mark; its word stands beside it. */
final class LineMark extends StackPane {
  private static final double BOX = 18;

  private final SVGPath path = new SVGPath();

  LineMark() {
    getChildren().add(path);
    setMinSize(BOX, BOX);
    setPrefSize(BOX, BOX);
    setMaxSize(BOX, BOX);
  }

  /** Goes, goes once more, or stands before a bar. */
  void show(GoingLine.Kind kind) {
    show(
        switch (kind) {
          case GOES -> "M1 9 H16 M11 4 L16 9 L11 14";
          case AGAIN -> "M1 5 H16 M12 1 L16 5 L12 9 M1 13 H16 M12 9 L16 13 L12 17";
          case HELD -> "M1 9 H8 M8 2 V16 M12 2 V16";
        },
        kind == GoingLine.Kind.HELD);
  }

  /** Not equal, an empty place, a broken list, a place that waits, one more, a note. */
  void show(CheckLine.Kind kind) {
    show(
        switch (kind) {
          case DIFFERENT -> "M3 6 H15 M3 12 H15 M13 2 L5 16";
          case MISSING -> "M2 6 V2 H6 M12 2 H16 V6 M16 12 V16 H12 M6 16 H2 V12";
          case FAULT -> "M4 2 H14 M4 6 H8 M10 6 H14 M4 10 H14 M4 14 H7 M12 12 L16 16 M16 12 L12 16";
          case NOT_FETCHED -> "M9 2 V11 M5 7 L9 11 L13 7 M3 15 H5 M8 15 H10 M13 15 H15";
          case UNLISTED -> "M9 3 V15 M3 9 H15";
          case NOTE -> "M9 3 V10 M9 14 V15";
        },
        kind != CheckLine.Kind.UNLISTED && kind != CheckLine.Kind.NOTE);
  }

  /** Off the line, written over, the same, an empty place, one more, a stroke. */
  void show(ReturnLine.Kind kind) {
    show(
        switch (kind) {
          case NOT_AS_ASKED -> "M3 3 H15 V15 H3 Z M9 6 V10 M9 12 V13";
          case CHANGED -> "M2 13 H16 M4 9 L8 5 L11 8 L15 3";
          case UNTOUCHED -> "M3 6 H15 M3 12 H15";
          case MISSING -> "M2 6 V2 H6 M12 2 H16 V6 M16 12 V16 H12 M6 16 H2 V12";
          case EXTRA -> "M9 3 V15 M3 9 H15";
          case ANSWERED -> "M3 15 L14 3";
        },
        kind != ReturnLine.Kind.ANSWERED);
  }

  private void show(String drawing, boolean needs) {
    path.setContent(drawing);
    path.getStyleClass().setAll("line-mark", needs ? "needs" : "fine");
  }
}
