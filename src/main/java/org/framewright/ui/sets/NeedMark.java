package org.framewright.ui.sets;

import javafx.css.PseudoClass;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.FillRule;
import javafx.scene.shape.SVGPath;
import org.framewright.studio.SetRow.Need;

/**
 * What a set needs a person for, as a mark: a full square with a gap, a clock, the caret of a
 * proofreader, an arrow at a bar, a square on its corner, a ring that is struck through, a stroke.
 * Each is told by its outline alone; its word stands beside it.
 */
final class NeedMark extends StackPane {
  private static final PseudoClass NEEDS = PseudoClass.getPseudoClass("needs");
  private static final PseudoClass URGENT = PseudoClass.getPseudoClass("urgent");
  private static final double BOX = 24;
  private static final double SCALE = 0.75;

  private final SVGPath path = new SVGPath();

  NeedMark() {
    path.getStyleClass().add("need-mark");
    path.setFillRule(FillRule.EVEN_ODD);
    path.setScaleX(SCALE);
    path.setScaleY(SCALE);
    getChildren().add(path);
    setMinSize(BOX, BOX);
    setPrefSize(BOX, BOX);
    setMaxSize(BOX, BOX);
  }

  void show(Need need) {
    path.setContent(drawing(need));
    path.pseudoClassStateChanged(URGENT, need == Need.URGENT);
    path.pseudoClassStateChanged(NEEDS, need != Need.NOTHING && need != Need.SILENT);
  }

  private static String drawing(Need need) {
    return switch (need) {
      case URGENT -> "M3 3 H21 V21 H3 Z M7 10 H17 V14 H7 Z";
      case SIGN_OFF -> "M3 12 A9 9 0 1 0 21 12 A9 9 0 1 0 3 12 Z M12 6 V12 L16 15";
      case PICKUP -> "M5 19 L12 6 L19 19";
      case LATE -> "M3 12 H15 M10 6 L16 12 L10 18 M20 4 V20";
      case TROUBLE -> "M12 3 L22 12 L12 21 L2 12 Z";
      case SILENT -> "M3 12 A9 9 0 1 0 21 12 A9 9 0 1 0 3 12 Z M6 18 L18 6";
      case NOTHING -> "M4 12 H20";
    };
  }
}
