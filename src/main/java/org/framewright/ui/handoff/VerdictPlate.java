package org.framewright.ui.handoff;

import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.SVGPath;

/**
 * An answer that is read from a metre away, told apart by its fill, its mark and its word: open and
 * underlined twice, filled, or hatched.
 */
final class VerdictPlate extends StackPane {
  private static final PseudoClass WHOLE = PseudoClass.getPseudoClass("whole");
  private static final PseudoClass NOT_WHOLE = PseudoClass.getPseudoClass("not-whole");
  private static final PseudoClass UNKNOWN = PseudoClass.getPseudoClass("unknown");
  private static final PseudoClass NARROW = PseudoClass.getPseudoClass("narrow");
  private static final double BOX = 34;
  private static final double SCALE = 1.4;

  /** Of the mark and what is around it, and of a letter of the answer; in ems. */
  private static final double BESIDES = 6;

  private static final double LETTER = 1.55;

  private final SVGPath path = new SVGPath();
  private final Label word = new Label();
  private final Label measure = new Label();

  VerdictPlate(String id) {
    path.getStyleClass().add("answer-mark");
    path.setScaleX(SCALE);
    path.setScaleY(SCALE);
    var mark = new StackPane(path);
    mark.setMinSize(BOX, BOX);
    mark.setPrefSize(BOX, BOX);
    word.setId(id);
    word.getStyleClass().add("plate-word");
    word.setMinWidth(Region.USE_PREF_SIZE);
    var said = new HBox(mark, word);
    said.getStyleClass().add("plate-said");
    said.setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
    measure.setVisible(false);
    measure.setManaged(false);
    getChildren().addAll(measure, said);
    setAlignment(Pos.CENTER_LEFT);
    getStyleClass().addAll("plate", "verdict");
    setMinWidth(0);
    widthProperty().addListener(_ -> fit());
    measure.fontProperty().addListener(_ -> fit());
  }

  /** In smaller letters where the answer would be cut otherwise. */
  private void fit() {
    double needed = measure.getFont().getSize() * (BESIDES + LETTER * word.getText().length());
    pseudoClassStateChanged(NARROW, getWidth() < needed);
  }

  void show(Verdict verdict, String said) {
    word.setText(said);
    path.setContent(
        switch (verdict) {
          case WHOLE -> "M8 14 L16 2 M3 18 H21 M3 23 H21";
          case NOT_WHOLE -> "M3 21 L12 3 L21 21";
          case NONE -> "M3 3 H9 M15 3 H21 V9 M21 15 V21 H15 M9 21 H3 V15 M3 9 V3";
          case UNKNOWN -> "M6 7 C6 0 18 0 18 7 C18 11 12 11 12 15 M12 20 V24";
        });
    pseudoClassStateChanged(WHOLE, verdict == Verdict.WHOLE);
    pseudoClassStateChanged(NOT_WHOLE, verdict == Verdict.NOT_WHOLE);
    pseudoClassStateChanged(UNKNOWN, verdict == Verdict.NONE || verdict == Verdict.UNKNOWN);
    fit();
  }
}
