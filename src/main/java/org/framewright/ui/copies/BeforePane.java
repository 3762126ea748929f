package org.framewright.ui.copies;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What was answered last, and how one asks. */
final class BeforePane extends VBox {
  private static final int STEPS = 3;

  private final Label title = new Label();
  private final VBox last = new VBox();
  private final ScrollPane scroll = new ScrollPane(last);

  BeforePane(Texts texts) {
    title.getStyleClass().add("part-title");
    title.setText(texts.get("copies.lastTitle"));
    last.setId("last-answers");
    last.getStyleClass().add("earlier-lines");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.prefViewportHeightProperty().bind(last.heightProperty());
    scroll.setAccessibleText(title.getText());
    var asks = new Label(texts.get("copies.howTitle"));
    asks.getStyleClass().add("part-title");
    asks.setMinHeight(Region.USE_PREF_SIZE);
    var how = new VBox();
    how.getStyleClass().add("how-copies");
    how.setMinHeight(Region.USE_PREF_SIZE);
    for (int step = 1; step <= STEPS; step++) {
      var number = new Label("" + step);
      number.getStyleClass().add("how-number");
      var words = WrappedText.of(texts.get("copies.how." + step));
      words.setMinWidth(0);
      HBox.setHgrow(words, Priority.ALWAYS);
      var line = new HBox(number, words);
      line.getStyleClass().add("how-line");
      how.getChildren().add(line);
    }
    getChildren().addAll(title, scroll, asks, how);
    getStyleClass().addAll("paper-sheet", "before-sheet");
  }

  void show(Outcome.Before before) {
    last.getChildren().setAll(before.answers().stream().map(BeforePane::line).toList());
    for (var part : List.of(title, scroll)) {
      part.setVisible(!before.answers().isEmpty());
      part.setManaged(part.isVisible());
    }
  }

  private static Node line(Outcome.Earlier earlier) {
    var mark = new AnswerMark();
    mark.show(earlier.answer());
    var words = WrappedText.of(earlier.sentence(), "earlier-words");
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    var line = new HBox(mark, words);
    line.getStyleClass().add("earlier-line");
    return line;
  }
}
