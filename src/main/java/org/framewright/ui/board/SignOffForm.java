package org.framewright.ui.board;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/**
 * The question who agrees: a name is chosen by its digit, by the arrow keys or a click; letters go
 * into the field for another.
 */
final class SignOffForm extends VBox {
  private final SignOffModel model;
  private final Texts texts;
  private final List<ToggleButton> names = new ArrayList<>();
  private final TextField another = new TextField();
  private final WrappedText wrong = new WrappedText("warning");

  /**
   * @param warning what is seen best before somebody agrees; may be empty
   */
  SignOffForm(SignOffModel model, Texts texts, String warning) {
    this.model = model;
    this.texts = texts;
    getStyleClass().add("question");
    if (!warning.isEmpty()) {
      getChildren().add(WrappedText.of(warning, "warning"));
    }
    for (var i = 0; i < model.names().size(); i++) {
      names.add(name(i));
    }
    getChildren().addAll(names);
    another.setId("dialog-field");
    another.setPromptText(texts.get(names.isEmpty() ? "board.agree.name" : "board.agree.another"));
    another.setAccessibleText(another.getPromptText());
    another.textProperty().bindBidirectional(model.typed());
    getChildren().addAll(another, wrong, WrappedText.of(texts.get("board.agree.kept"), "quiet"));
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventFilter(KeyEvent.KEY_TYPED, this::typed);
    model.typed().addListener(_ -> show());
    model.chosen().addListener(_ -> show());
    show();
  }

  private ToggleButton name(int place) {
    var button = new ToggleButton(model.names().get(place));
    button.setId("agrees-" + (place + 1));
    button.setMnemonicParsing(false);
    button.getStyleClass().add("agrees");
    button.setMaxWidth(Double.MAX_VALUE);
    button.setMinWidth(0);
    var cap = new KeyCap();
    cap.setText(String.valueOf(place + 1));
    button.setGraphic(cap);
    button.setContentDisplay(ContentDisplay.RIGHT);
    button.setOnAction(
        _ -> {
          model.choose(place);
          show();
        });
    return button;
  }

  /** Where the keys go first. */
  Node focus() {
    return names.isEmpty() ? another : names.getFirst();
  }

  private void show() {
    for (var i = 0; i < names.size(); i++) {
      names.get(i).setSelected(i == model.chosen().get());
    }
    wrong.setText(
        model.isComputer()
            ? texts.get("board.agree.computer")
            : model.lacksLetters() ? texts.get("board.agree.noName") : "");
    wrong.setVisible(!wrong.getText().isEmpty());
    wrong.setManaged(wrong.isVisible());
  }

  private void pressed(KeyEvent event) {
    var digit = digit(event.getCode());
    if (digit > 0 && digit <= names.size() && another.getText().isEmpty()) {
      choose(digit - 1);
      event.consume();
    } else if (event.getCode() == KeyCode.DOWN || event.getCode() == KeyCode.UP) {
      step(event.getCode() == KeyCode.DOWN ? 1 : -1);
      event.consume();
    }
  }

  /** From the last name one comes to the field, and back. */
  private void step(int by) {
    if (by > 0 && (another.isFocused() || model.chosen().get() >= names.size() - 1)) {
      another.requestFocus();
    } else if (another.isFocused() && !names.isEmpty()) {
      choose(names.size() - 1);
    } else if (!names.isEmpty()) {
      model.step(by);
      names.get(model.chosen().get()).requestFocus();
    }
  }

  private void choose(int place) {
    model.choose(place);
    names.get(place).requestFocus();
  }

  private static int digit(KeyCode code) {
    return switch (code) {
      case DIGIT1, NUMPAD1 -> 1;
      case DIGIT2, NUMPAD2 -> 2;
      case DIGIT3, NUMPAD3 -> 3;
      case DIGIT4, NUMPAD4 -> 4;
      default -> 0;
    };
  }

  private void typed(KeyEvent event) {
    var text = event.getCharacter();
    if (another.isFocused()) {
      // The digit that chose a name is not written.
      if (another.getText().isEmpty() && isDigitOfAName(text)) {
        event.consume();
      }
    } else if (!text.isEmpty() && Character.isLetter(text.codePointAt(0))) {
      another.requestFocus();
      another.setText(text);
      another.end();
      event.consume();
    }
  }

  private boolean isDigitOfAName(String text) {
    return text.length() == 1 && text.charAt(0) > '0' && text.charAt(0) <= '0' + names.size();
  }
}
