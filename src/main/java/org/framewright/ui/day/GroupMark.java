package org.framewright.ui.day;

import javafx.css.PseudoClass;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.SVGPath;

/** How much a line asks for, as a mark: a caret, a question, a stroke. */
final class GroupMark extends StackPane {
  private static final PseudoClass NEEDS = PseudoClass.getPseudoClass("needs");
  private static final double BOX = 18;

  private final SVGPath path = new SVGPath();

  GroupMark() {
    path.getStyleClass().add("look-mark");
    getChildren().add(path);
    setMinSize(BOX, BOX);
    setPrefSize(BOX, BOX);
    setMaxSize(BOX, BOX);
  }

  void show(LookLine.Group group, boolean looked) {
    path.setContent(
        switch (group) {
          case NEEDS -> "M3 15 L9 3 L15 15";
          case JUDGE -> "M4 6 C4 0 14 0 14 6 C14 9 9 9 9 12 M9 15 V17";
          case FINE -> "M4 16 L14 2";
        });
    path.pseudoClassStateChanged(NEEDS, group == LookLine.Group.NEEDS && !looked);
  }
}
