package org.framewright.ui.board;

import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.TextFormatter;
import javafx.scene.layout.VBox;
import org.framewright.job.Comment;
import org.framewright.ui.look.Texts;

/** Asks what is to be said, and who says it. */
final class CommentForm extends VBox {
  private final TextField text = new TextField();
  private final TextField by = new TextField();

  /**
   * @param last who said something last; may be empty
   */
  CommentForm(Texts texts, String last) {
    getStyleClass().add("question");
    text.setId("comment-text");
    text.setTextFormatter(
        new TextFormatter<>(
            change -> change.getControlNewText().length() <= Comment.LONGEST ? change : null));
    by.setId("comment-by");
    by.setText(last);
    getChildren()
        .setAll(
            label(texts.get("comment.text"), text), text, label(texts.get("comment.by"), by), by);
  }

  private static Label label(String word, TextField field) {
    var label = new Label(word);
    label.setLabelFor(field);
    field.setAccessibleText(word);
    return label;
  }

  Node focus() {
    return text;
  }

  /** Whether anything is said. */
  ObservableBooleanValue ready() {
    return Bindings.createBooleanBinding(() -> !text.getText().isBlank(), text.textProperty());
  }

  String text() {
    return text.getText().strip();
  }

  String by() {
    return by.getText().strip();
  }
}
