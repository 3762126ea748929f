package org.framewright.ui.copies;

import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The answers, one a card, and of the one that is read why, and what one says. */
final class AnswersPane extends VBox {
  private static final int MOST_AT_ONCE = 3;

  private final CopiesModel model;
  private final ListView<CardAnswer> plates = new ListView<>();
  private final VBox reasons = new VBox();
  private final WrappedText sentence = new WrappedText("sentence");
  private final VBox sheet;
  private final WrappedText again = new WrappedText("again-words", "say-line");
  private final HBox saying;
  private final FilesPane files;
  private final Subscription following;

  AnswersPane(CopiesModel model, Texts texts, FilesPane files, Command say) {
    this.model = model;
    this.files = files;
    plates.setId("answers");
    plates.setCellFactory(_ -> new PlateCell(texts, model::isPast));
    plates.setAccessibleText(texts.get("copies.answers"));
    plates.getStyleClass().add("plates");
    plates.setMinHeight(USE_PREF_SIZE);
    plates
        .prefHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                () ->
                    2
                        + plates.getFixedCellSize()
                            * Math.clamp(plates.getItems().size(), 1, MOST_AT_ONCE),
                plates.fixedCellSizeProperty(),
                plates.getItems()));
    plates
        .getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (_, _, now) -> {
              if (now != null) {
                model.chosen().set(now);
              }
            });
    reasons.getStyleClass().add("card-reasons");
    var scroll = new ScrollPane(reasons);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.getStyleClass().add("reasons-scroll");
    // As high as what it says, up to what the page has to spare.
    scroll.prefViewportHeightProperty().bind(reasons.heightProperty());
    var copy = CommandControls.button(say, texts.get("copies.act.say"), texts);
    copy.setId("copies-say");
    sentence.setMinWidth(0);
    HBox.setHgrow(sentence, Priority.ALWAYS);
    saying = new HBox(sentence, copy);
    saying.getStyleClass().add("say-line");
    saying.setMinHeight(USE_PREF_SIZE);
    // No button beside it: the one that compares is always in sight.
    again.setId("copies-again");
    again.setMinHeight(USE_PREF_SIZE);
    sheet = new VBox(plates, scroll, saying, again);
    sheet.getStyleClass().addAll("paper-sheet", "answer-sheet");
    VBox.setVgrow(files, Priority.ALWAYS);
    getChildren().addAll(sheet, files);
    getStyleClass().add("answers-part");
    following =
        Subscription.combine(
            model.chosen().subscribe(this::show), model.again().subscribe(_ -> showAgainOnAll()));
  }

  void show(Outcome.Answered answered) {
    plates.getItems().setAll(answered.answers());
    sheet.setVisible(!answered.answers().isEmpty());
    sheet.setManaged(sheet.isVisible());
    show(model.chosen().get());
  }

  private void show(CardAnswer answer) {
    if (answer == null) {
      return;
    }
    plates.getSelectionModel().select(answer);
    reasons.getChildren().setAll(answer.why().stream().map(AnswersPane::reason).toList());
    sentence.setText(answer.sentence());
    showAgain();
  }

  /** What does not hold any more is no sentence to repeat; in its place stands what to do. */
  private void showAgain() {
    var answer = model.chosen().get();
    boolean past = answer != null && model.isPast(answer);
    again.setText(model.again().get());
    saying.setVisible(!past);
    saying.setManaged(!past);
    again.setVisible(past);
    again.setManaged(past);
  }

  private void showAgainOnAll() {
    showAgain();
    plates.refresh();
  }

  private static Node reason(CardAnswer.Why why) {
    var message = WrappedText.of(why.message(), "field-word");
    if (why.remedy().isEmpty()) {
      return new VBox(message);
    }
    return new VBox(message, WrappedText.of(why.remedy(), "quiet"));
  }

  /** Where the keys go: the answers, or without a card the files. */
  Node focus() {
    return plates.getItems().isEmpty() ? files.list() : plates;
  }

  void dispose() {
    following.unsubscribe();
    files.dispose();
  }
}
