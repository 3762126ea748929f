package org.framewright.ui.copies;

import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.copies.Compared;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;

/** Asks who says that a file of a card need not be kept, and says what may be lost by that. */
final class WaiveDialog {
  private final Texts texts;
  private final TextField person = new TextField();
  private final VBox node = new VBox();

  /**
   * @param last who said so of another file; empty if nobody did
   */
  WaiveDialog(FileLine line, String last, Texts texts) {
    this.texts = texts;
    var file = new Label(line.file());
    file.getStyleClass().addAll("code", "waived-file");
    file.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    file.setMinWidth(0);
    var size = line.damaged().map(Compared.Damaged::size).orElse(0L);
    var what =
        WrappedText.of(
            texts.get("copies.waive.file", line.from(), texts.formats().size(size), line.more()));
    var word = new Label(texts.get("copies.waive.by"));
    word.getStyleClass().add("field-word");
    word.setMinWidth(Region.USE_PREF_SIZE);
    person.setId("waive-by");
    person.setText(last);
    person.setAccessibleText(word.getText());
    HBox.setHgrow(person, Priority.ALWAYS);
    var asking = new HBox(word, person);
    asking.getStyleClass().add("in-line");
    node.getStyleClass().add("word-dialog");
    node.getChildren()
        .addAll(
            file,
            what,
            WrappedText.of(texts.get("copies.waive.lost"), "field-word"),
            WrappedText.of(texts.get("copies.waive.only"), "quiet"),
            asking);
  }

  /** The question. */
  DialogSpec spec(Consumer<String> answer) {
    return DialogSpec.asking(
        texts.get("copies.waive.title"),
        node,
        person,
        texts.get("copies.waive.do"),
        Bindings.createBooleanBinding(() -> !person.getText().isBlank(), person.textProperty()),
        () -> answer.accept(person.getText()));
  }
}
