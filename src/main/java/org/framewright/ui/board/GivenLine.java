package org.framewright.ui.board;

import javafx.scene.control.Label;
import org.framewright.ui.look.Texts;

/** A quiet line below the list while setups of it are shot by other sets: which, and by which. */
final class GivenLine extends Label {
  private final Texts texts;

  GivenLine(Texts texts) {
    this.texts = texts;
    setId("given");
    getStyleClass().add("given-line");
    setMinWidth(0);
    setMaxWidth(Double.MAX_VALUE);
  }

  void show(BoardModel.Standing standing) {
    setVisible(!standing.given().isEmpty());
    setManaged(isVisible());
    setText(standing.givenWords(texts));
  }
}
