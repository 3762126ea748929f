package org.framewright.ui.board;

import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;

/**
 * The row of what is done with a setup, each with its key on it. The first says what comes: it is
 * the one that an assistant presses all day.
 */
final class SetActions extends HBox {
  private final Texts texts;
  private final Button next;
  private final List<Button> others;

  /**
   * Buttons for commands.
   *
   * @param next what the setup on set is shot with
   * @param others those for the chosen setup
   */
  SetActions(Texts texts, Command next, List<Command> others) {
    this.texts = texts;
    this.next = CommandControls.act(next, "", texts);
    this.next.getStyleClass().add("does-it");
    this.next.setId("act-next");
    this.next.setMaxWidth(Double.MAX_VALUE);
    this.next.setMinWidth(0);
    HBox.setHgrow(this.next, Priority.ALWAYS);
    this.others =
        others.stream()
            .map(one -> CommandControls.act(one, texts.get("board.act." + one.word()), texts))
            .toList();
    getStyleClass().add("set-actions");
    getChildren().add(this.next);
    getChildren().addAll(this.others);
  }

  /** Whether there is room for the keys. */
  void showKeys(boolean shown) {
    others.forEach(
        button ->
            button.setContentDisplay(shown ? ContentDisplay.RIGHT : ContentDisplay.TEXT_ONLY));
  }

  void show(BoardModel.Now now) {
    var following = now.next().stream().findFirst();
    next.setText(
        now.onSet().isPresent()
            ? following
                .map(row -> texts.get("board.act.shotNext", row.code(), row.setup().title()))
                .orElse(texts.get("board.act.shot"))
            : following
                .map(row -> texts.get("board.act.onSet", row.code(), row.setup().title()))
                .orElse(texts.get(now.noList() ? "board.next.noList" : "board.next.none")));
  }
}
