package org.framewright.ui.copies;

import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.TallCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What was answered last, and how one asks. */
final class BeforePane extends VBox {
  private final Label title = new Label();
  private final ListView<Outcome.Earlier> list = new ListView<>();
  private final Texts texts;

  BeforePane(Texts texts) {
    this.texts = texts;
    title.getStyleClass().add("part-title");
    title.setText(texts.get("copies.lastTitle"));
    list.setId("last-answers");
    list.setCellFactory(_ -> new EarlierCell());
    list.setAccessibleText(texts.get("copies.lastTitle"));
    VBox.setVgrow(list, Priority.ALWAYS);
    var how = new VBox();
    how.getStyleClass().add("how-copies");
    for (int step = 1; step <= 3; step++) {
      var number = new Label("" + step);
      number.getStyleClass().add("how-number");
      var words = WrappedText.of(texts.get("copies.how." + step));
      HBox.setHgrow(words, Priority.ALWAYS);
      var line = new HBox(number, words);
      line.getStyleClass().add("how-line");
      how.getChildren().add(line);
    }
    var asks = new Label(texts.get("copies.howTitle"));
    asks.getStyleClass().add("part-title");
    getChildren().addAll(title, list, asks, how);
    getStyleClass().addAll("paper-sheet", "before-sheet");
  }

  void show(Outcome.Before before) {
    list.getItems().setAll(before.answers());
    for (var part : new javafx.scene.Node[] {title, list}) {
      part.setVisible(!before.answers().isEmpty());
      part.setManaged(part.isVisible());
    }
  }

  /** An earlier answer in a sentence. */
  private final class EarlierCell extends TallCell<Outcome.Earlier> {
    private final AnswerMark mark = new AnswerMark();
    private final WrappedText words = new WrappedText();
    private final HBox box = new HBox(mark, words);

    EarlierCell() {
      words.setMinWidth(0);
      HBox.setHgrow(words, Priority.ALWAYS);
      box.getStyleClass().add("earlier-line");
      box.setMinWidth(0);
      box.setPrefWidth(1);
    }

    @Override
    protected void updateItem(Outcome.Earlier earlier, boolean empty) {
      super.updateItem(earlier, empty);
      if (empty || earlier == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      mark.show(earlier.answer());
      words.setText(earlier.sentence());
      setGraphic(box);
      setAccessibleText(texts.apart(earlier.answer().word(texts), earlier.sentence()));
    }
  }
}
