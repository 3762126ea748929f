package org.framewright.ui.board;

import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.look.Texts;

/**
 * The last line of the list while there is something in the frames folder that no setup has: how
 * much, and where it is dealt with.
 */
final class LooseLine extends HBox {
  private final Texts texts;
  private final Label words = new Label();

  /**
   * @param show brings the frames of no setup to the front
   */
  LooseLine(Texts texts, Command show) {
    this.texts = texts;
    words.setId("loose");
    words.setMinWidth(0);
    words.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(words, Priority.ALWAYS);
    var button = new Button(texts.get("board.loose.show"), new KeyCap(show, texts));
    button.setId("show-loose");
    button.setContentDisplay(ContentDisplay.RIGHT);
    button.getStyleClass().add("slight");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setFocusTraversable(false);
    button.setOnAction(_ -> show.fire());
    button.visibleProperty().bind(show.enabled());
    getStyleClass().add("loose-line");
    getChildren().addAll(words, button);
  }

  void show(BoardModel.Standing standing) {
    setVisible(standing.loose() + standing.notUnderstood() > 0);
    setManaged(isVisible());
    if (isVisible()) {
      words.setText(texts.get("board.loose", standing.loose(), standing.notUnderstood()));
    }
  }
}
