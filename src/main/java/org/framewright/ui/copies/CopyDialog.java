package org.framewright.ui.copies;

import java.nio.file.Path;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;

/** Asks what is copied, and on which disks. */
final class CopyDialog {
  private final CopyQuestion question;
  private final Desk desk;
  private final Texts texts;
  private final ComboBox<PlaceLine> from = new ComboBox<>();
  private final ListView<Path> targets = new ListView<>();
  private final Button add = new Button();
  private final VBox node = new VBox();

  CopyDialog(CopyQuestion question, Desk desk) {
    this.question = question;
    this.desk = desk;
    this.texts = desk.texts();
    from.setId("copy-from");
    from.getItems().setAll(question.sources());
    from.setCellFactory(_ -> new SourceCell());
    from.setButtonCell(new SourceCell());
    from.setMaxWidth(Double.MAX_VALUE);
    from.valueProperty().bindBidirectional(question.from());
    from.setAccessibleText(texts.get("copies.copy.from"));
    targets.setId("copy-to");
    targets.setItems(question.disks());
    targets.setCellFactory(_ -> new TargetCell());
    targets.setPlaceholder(new Label(texts.get("copies.copy.noTargets")));
    targets.setAccessibleText(texts.get("copies.copy.to"));
    targets.getStyleClass().add("copy-targets");
    targets.setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.DELETE) {
            remove();
            event.consume();
          }
        });
    // The folder's name follows what is copied.
    question.from().addListener(_ -> targets.refresh());
    targets.getSelectionModel().selectFirst();
    add.setId("copy-add");
    add.setText(texts.get("copies.copy.add"));
    add.setOnAction(_ -> add());
    var remove = new Button(texts.get("copies.copy.remove"));
    remove.setId("copy-remove");
    remove.setOnAction(_ -> remove());
    remove
        .disableProperty()
        .bind(Bindings.isNull(targets.getSelectionModel().selectedItemProperty()));
    var buttons = new HBox(add, remove);
    buttons.getStyleClass().add("in-line");
    var mhl = new CheckBox(texts.get("copies.copy.mhl"));
    mhl.setId("copy-mhl");
    mhl.selectedProperty().bindBidirectional(question.mhl());
    mhl.setTooltip(new Tooltip(texts.get("copies.copy.mhl.what")));
    node.getStyleClass().add("copy-dialog");
    node.getChildren()
        .addAll(
            word("copies.copy.from"),
            from,
            word("copies.copy.to"),
            targets,
            buttons,
            mhl,
            WrappedText.of(texts.get("copies.copy.safe"), "quiet"));
  }

  private Label word(String key) {
    var word = new Label(texts.get(key));
    word.getStyleClass().add("field-word");
    return word;
  }

  /** The question. */
  DialogSpec spec(Runnable answer) {
    return DialogSpec.asking(
        texts.get("copies.copy.title"),
        node,
        question.disks().isEmpty() ? add : focus(),
        texts.get("copies.copy.do"),
        question.ready(),
        answer);
  }

  private Node focus() {
    return targets;
  }

  private void add() {
    desk.files()
        .folder(texts.get("copies.copy.addTitle"), Optional.empty())
        .ifPresent(question::add);
  }

  private void remove() {
    var chosen = targets.getSelectionModel().getSelectedItem();
    if (chosen != null) {
      question.disks().remove(chosen);
    }
  }

  private final class SourceCell extends ListCell<PlaceLine> {
    @Override
    protected void updateItem(PlaceLine line, boolean empty) {
      super.updateItem(line, empty);
      setText(
          empty || line == null
              ? ""
              : texts.get(
                  "copies.copy.source",
                  texts.get("copies.kind." + line.kind().word()),
                  line.name(),
                  line.folder().toString()));
    }
  }

  private final class TargetCell extends ListCell<Path> {
    TargetCell() {
      setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
      getStyleClass().add("code");
    }

    @Override
    protected void updateItem(Path disk, boolean empty) {
      super.updateItem(disk, empty);
      setText(
          empty || disk == null
              ? ""
              : question.target(disk).map(Path::toString).orElse(disk.toString()));
    }
  }
}
