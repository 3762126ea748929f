package org.framewright.ui.board;

import java.util.function.Consumer;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.live.ViewCount;
import org.framewright.ui.look.Pegs;
import org.framewright.ui.look.Texts;

/**
 * One view of the setup on set: its word, its frames out of those wanted, its pegs. A click brings
 * it before the camera.
 */
final class ViewBlock extends VBox {
  private static final PseudoClass BEFORE = PseudoClass.getPseudoClass("before");
  private static final PseudoClass COMPLETE = PseudoClass.getPseudoClass("complete");

  private final Texts texts;
  private final Label name = label("view-word");
  private final Label now = label("view-now");
  private final Label count = label("view-count");
  private final Label wanted = label("view-wanted");
  private final Pegs pegs = new Pegs();
  private String code = "";

  /**
   * A block of no view.
   *
   * @param bring hears the code of a view that a person wants before the camera
   */
  ViewBlock(Texts texts, Consumer<String> bring) {
    this.texts = texts;
    var words = new VBox(name, now);
    words.setAlignment(Pos.CENTER_LEFT);
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    count.setMinWidth(Region.USE_PREF_SIZE);
    wanted.setMinWidth(Region.USE_PREF_SIZE);
    var numbers = new HBox(words, count, wanted);
    numbers.getStyleClass().add("view-numbers");
    numbers.setAlignment(Pos.CENTER_LEFT);
    now.setText(texts.get("board.view.now"));
    getStyleClass().add("view-block");
    getChildren().addAll(numbers, pegs);
    setFocusTraversable(false);
    setOnMouseClicked(
        _ -> {
          if (!code.isEmpty()) {
            bring.accept(code);
          }
        });
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    label.setMinWidth(0);
    return label;
  }

  void show(String word, ViewCount view) {
    int frames = view.wanted().orElse(0);
    code = view.code();
    name.setText(word);
    now.setVisible(view.before());
    now.setManaged(view.before());
    count.setText(String.valueOf(view.frames()));
    wanted.setText(frames > 0 ? texts.get("board.of", frames) : "");
    pegs.show(view.frames(), frames);
    pegs.setManaged(frames > 0);
    pseudoClassStateChanged(BEFORE, view.before());
    pseudoClassStateChanged(COMPLETE, view.complete() && !view.code().isEmpty());
    setAccessibleText(texts.get("board.view.spoken", word, view.frames(), frames));
  }
}
