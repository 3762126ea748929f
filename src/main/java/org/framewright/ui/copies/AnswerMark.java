package org.framewright.ui.copies;

import javafx.scene.layout.StackPane;
import javafx.scene.shape.SVGPath;

/**
 * An answer as a mark: the proofreader's caret where something is to be put in, a question mark,
 * and a stroke that is underlined twice. The word stands beside it.
 */
final class AnswerMark extends StackPane {
  private static final double BOX = 24;

  private final SVGPath path = new SVGPath();

  AnswerMark() {
    path.getStyleClass().add("answer-mark");
    getChildren().add(path);
    getStyleClass().add("answer-mark-box");
    setMinSize(BOX, BOX);
    setPrefSize(BOX, BOX);
    setMaxSize(BOX, BOX);
  }

  void show(Answer answer) {
    path.setContent(
        switch (answer) {
          case NOT_YET -> "M3 21 L12 3 L21 21";
          case CANNOT_TELL -> "M6 8 C6 0 18 0 18 8 C18 12 12 12 12 17 M12 20 V24";
          case MAY_BE_CLEARED -> "M8 14 L16 2 M3 18 H21 M3 23 H21";
        });
  }
}
