package org.framewright.ui.copies;

import java.util.function.Predicate;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.CellRow;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;

/** The answer about a card on a plate that is read from a metre away, and which card it is. */
final class PlateCell extends LineCell<CardAnswer> {
  private static final PseudoClass NOT_YET = PseudoClass.getPseudoClass("not-yet");
  private static final PseudoClass CANNOT_TELL = PseudoClass.getPseudoClass("cannot-tell");
  private static final PseudoClass CLEAR = PseudoClass.getPseudoClass("may-be-cleared");

  private static final PseudoClass PAST = PseudoClass.getPseudoClass("past");
  private static final PseudoClass NARROW = PseudoClass.getPseudoClass("narrow");

  /** Of the card's name, the mark and what is between, and of a letter of the answer; in ems. */
  private static final double BESIDES = 18;

  private static final double LETTER = 1.5;

  private final Texts texts;
  private final Predicate<CardAnswer> past;
  private final AnswerMark mark = AnswerMark.large();
  private final Label word = new Label();
  private final Label name = new Label();
  private final Label state = new Label();
  private final StackPane plate;
  private final CellRow box;

  /**
   * @param past whether an answer does not hold any more
   */
  PlateCell(Texts texts, Predicate<CardAnswer> past) {
    this.texts = texts;
    this.past = past;
    word.getStyleClass().add("plate-word");
    word.setMinWidth(Region.USE_PREF_SIZE);
    var said = new HBox(mark, word);
    said.getStyleClass().add("plate-said");
    said.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    plate = new StackPane(said);
    plate.setAlignment(Pos.CENTER_LEFT);
    plate.getStyleClass().add("plate");
    HBox.setHgrow(plate, Priority.ALWAYS);
    name.getStyleClass().add("plate-name");
    name.setMinWidth(0);
    state.getStyleClass().add("quiet");
    var card = new VBox(name, state);
    card.getStyleClass().add("plate-card");
    card.setMinWidth(0);
    box = new CellRow(plate, card);
    box.getStyleClass().add("plate-box");
    box.widthProperty().addListener(_ -> fit());
  }

  /** In smaller letters where the answer would be cut otherwise. */
  private void fit() {
    double needed = state.getFont().getSize() * (BESIDES + LETTER * word.getText().length());
    box.pseudoClassStateChanged(NARROW, box.getWidth() < needed);
  }

  @Override
  protected void showLine(CardAnswer answer) {
    mark.show(answer.answer());
    word.setText(answer.answer().word(texts));
    name.setText(answer.name());
    boolean over = past.test(answer);
    state.setText(over ? texts.get("copies.past") : answer.state());
    plate.pseudoClassStateChanged(PAST, over);
    plate.pseudoClassStateChanged(NOT_YET, answer.answer() == Answer.NOT_YET);
    plate.pseudoClassStateChanged(CANNOT_TELL, answer.answer() == Answer.CANNOT_TELL);
    plate.pseudoClassStateChanged(CLEAR, answer.answer() == Answer.MAY_BE_CLEARED);
    fit();
    setGraphic(box);
    setAccessibleText(texts.get("copies.spoken", answer.name(), word.getText(), state.getText()));
  }
}
