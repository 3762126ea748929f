package org.framewright.ui.client;

import java.util.List;
import java.util.function.UnaryOperator;
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
import org.framewright.ui.look.WrappedText;

/** The wanted views of a setup and how many frames each has. */
final class ClientViews extends VBox {
  private static final PseudoClass COMPLETE = PseudoClass.getPseudoClass("complete");

  private final Texts texts;
  private final UnaryOperator<String> viewWord;

  private static final class Block extends VBox {
    private final WrappedText word = new WrappedText("view-word");
    private final Label complete = new Label();
    private final Label count = new Label();
    private final Label wanted = new Label();
    private final Pegs pegs = new Pegs().filling();

    Block(Texts texts) {
      word.setMostLines(1);
      word.setMinWidth(0);
      complete.setText(texts.get("client.complete"));
      complete.getStyleClass().add("view-now");
      count.getStyleClass().add("view-count");
      count.setMinWidth(USE_PREF_SIZE);
      wanted.setMinWidth(USE_PREF_SIZE);
      var words = new VBox(word, complete);
      words.setAlignment(Pos.CENTER_LEFT);
      words.setMinWidth(0);
      HBox.setHgrow(words, Priority.ALWAYS);
      var numbers = new HBox(words, count, wanted);
      numbers.getStyleClass().add("view-numbers");
      numbers.setAlignment(Pos.CENTER_LEFT);
      getStyleClass().add("client-view");
      setMinHeight(Region.USE_PREF_SIZE);
      getChildren().addAll(numbers, pegs);
    }
  }

  ClientViews(Texts texts, UnaryOperator<String> viewWord) {
    this.texts = texts;
    this.viewWord = viewWord;
    getStyleClass().add("client-views");
    setMinHeight(0);
  }

  void show(List<ViewCount> views) {
    while (getChildren().size() < views.size()) {
      getChildren().add(new Block(texts));
    }
    getChildren().remove(views.size(), getChildren().size());
    for (var i = 0; i < views.size(); i++) {
      show((Block) getChildren().get(i), views.get(i));
    }
  }

  private void show(Block block, ViewCount view) {
    var wanted = view.wanted().orElse(0);
    var word = view.code().isEmpty() ? texts.get("board.noView") : viewWord.apply(view.code());
    block.word.setText(word);
    block.count.setText("" + view.frames());
    block.wanted.setText(wanted > 0 ? texts.get("board.of", wanted) : "");
    var complete = view.complete() && !view.code().isEmpty();
    block.complete.setVisible(complete);
    block.complete.setManaged(complete);
    block.pegs.show(view.frames(), wanted);
    block.pegs.setManaged(wanted > 0);
    block.pseudoClassStateChanged(COMPLETE, complete);
    block.setAccessibleText(texts.get("board.view.spoken", word, view.frames(), wanted));
  }
}
