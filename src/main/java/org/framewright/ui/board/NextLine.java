package org.framewright.ui.board;

import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.framewright.ui.look.Texts;

/**
 * What comes next, and the two after it. The labels stay and change: new ones would have to be
 * styled each time.
 */
final class NextLine extends HBox {
  private final Texts texts;
  private final Label word = label("next-word");
  private final Label title = label("next-title");
  private final Label then = label("then-word");
  private final List<Label> codes =
      List.of(label("next-code"), label("then-code"), label("then-code"));

  NextLine(Texts texts) {
    this.texts = texts;
    title.setMinWidth(0);
    title.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(title, Priority.ALWAYS);
    then.setText(texts.get("board.then"));
    getStyleClass().add("next-line");
    setId("next");
    getChildren().setAll(word, codes.getFirst(), title, then, codes.get(1), codes.getLast());
  }

  void show(BoardModel.Now now) {
    var ahead = now.next();
    word.setText(
        now.noList()
            ? texts.get("board.next.noList")
            : texts.get(ahead.isEmpty() ? "board.next.none" : "board.next"));
    title.setText(ahead.isEmpty() ? "" : ahead.getFirst().setup().title());
    show(title, !ahead.isEmpty());
    show(then, ahead.size() > 1);
    for (var i = 0; i < codes.size(); i++) {
      codes.get(i).setText(i < ahead.size() ? ahead.get(i).code() : "");
      show(codes.get(i), i < ahead.size());
    }
  }

  private static void show(Label label, boolean shown) {
    label.setVisible(shown);
    label.setManaged(shown);
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    label.setMinWidth(USE_PREF_SIZE);
    return label;
  }
}
