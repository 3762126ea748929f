package org.framewright.ui.copies;

import javafx.scene.layout.StackPane;
import javafx.scene.shape.SVGPath;

/**
 * An answer as a mark: the proofreader's caret where something is to be put in, a question mark,
 * and a stroke that is underlined twice. The word stands beside it.
 */
final class AnswerMark extends StackPane {
  private static final double BOX = 24;

  /** Beside words that are read from afar. */
  private static final double LARGE = 1.4;

  private final SVGPath path = new SVGPath();

  AnswerMark() {
    this(1);
  }

  static AnswerMark large() {
    return new AnswerMark(LARGE);
  }

  private AnswerMark(double scale) {
    path.getStyleClass().add("answer-mark");
    path.setScaleX(scale);
    path.setScaleY(scale);
    getChildren().add(path);
    getStyleClass().add("answer-mark-box");
    setMinSize(BOX * scale, BOX * scale);
    setPrefSize(BOX * scale, BOX * scale);
    setMaxSize(BOX * scale, BOX * scale);
  }

  void show(Answer answer) {
    path.setContent(
        switch (answer) {
          case NOT_YET -> "M3 21 L12 3 L21 21";
          case CANNOT_TELL -> "M6 7 C6 0 18 0 18 7 C18 11 12 11 12 15 M12 20 V24";
          case MAY_BE_CLEARED -> "M8 14 L16 2 M3 18 H21 M3 23 H21";
        });
  }
}
