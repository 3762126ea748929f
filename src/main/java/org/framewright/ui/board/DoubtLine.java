package org.framewright.ui.board;

import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.framewright.base.PlainText;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.look.Texts;

/** The first line of the list while a slate contradicts what is on set, and how it is followed. */
final class DoubtLine extends HBox {
  private final Texts texts;
  private final Label words = new Label();

  /**
   * @param follow puts on set what the slate says
   */
  DoubtLine(Texts texts, Command follow) {
    this.texts = texts;
    words.setId("slate-doubt");
    words.setMinWidth(0);
    words.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(words, Priority.ALWAYS);
    var button = new Button(texts.get("board.doubt.follow"), new KeyCap(follow, texts));
    button.setId("follow-slate");
    button.setContentDisplay(ContentDisplay.RIGHT);
    button.getStyleClass().add("slight");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setFocusTraversable(false);
    button.setOnAction(_ -> follow.fire());
    getStyleClass().add("loose-line");
    getChildren().addAll(words, button);
    setVisible(false);
    setManaged(false);
  }

  void show(BoardModel.Standing standing) {
    setVisible(standing.doubt().isPresent());
    setManaged(isVisible());
    standing
        .doubt()
        .ifPresent(
            doubt ->
                words.setText(
                    texts.get(
                        "board.doubt",
                        PlainText.line(doubt.says().code()),
                        PlainText.line(doubt.onSet()))));
  }
}
