package org.framewright.ui.board;

import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;

/** One view of the setup on set: its word, its frames out of those wanted, its pegs. */
final class ViewBlock extends VBox {
  private final Texts texts;
  private final Label name = label("view-word");
  private final Label count = label("view-count");
  private final Label wanted = label("view-wanted");
  private final Pegs pegs = new Pegs();

  ViewBlock(Texts texts) {
    this.texts = texts;
    var numbers = new HBox(count, wanted);
    numbers.getStyleClass().add("view-numbers");
    numbers.setAlignment(Pos.BASELINE_LEFT);
    getStyleClass().add("view-block");
    getChildren().addAll(name, numbers, pegs);
    setFocusTraversable(false);
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    label.setMinWidth(0);
    return label;
  }

  void show(String word, ViewCount view) {
    var frames = view.wanted().orElse(0);
    name.setText(view.before() ? texts.get("board.view.before", word) : word);
    count.setText(String.valueOf(view.frames()));
    wanted.setText(frames > 0 ? texts.get("board.of", frames) : "");
    pegs.show(view);
    style("before", view.before());
    style("complete", view.complete() && !view.code().isEmpty());
    setAccessibleText(texts.get("board.view.spoken", word, view.frames(), frames));
  }

  private void style(String word, boolean on) {
    if (!on) {
      getStyleClass().remove(word);
    } else if (!getStyleClass().contains(word)) {
      getStyleClass().add(word);
    }
  }
}
