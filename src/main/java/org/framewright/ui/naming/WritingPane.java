package org.framewright.ui.naming;

import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.naming.Finding;
import org.framewright.ui.command.KeyFocus;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The paper on which a convention is written, with line numbers beside it and saving below. */
final class WritingPane extends VBox {
  private final Texts texts;
  private final ConventionModel model;
  private final TextArea area = new TextArea();
  private final Gutter gutter = new Gutter(area);
  private final WrappedText said = new WrappedText();
  private final Subscription following;

  WritingPane(ConventionModel model, Texts texts, Runnable saveAs, Runnable fromNames) {
    this.model = model;
    this.texts = texts;
    area.setId("convention-text");
    area.getStyleClass().add("code-area");
    area.textProperty().bindBidirectional(model.text());
    area.setAccessibleText(texts.get("naming.text"));
    KeyFocus.leaveByTab(area);
    HBox.setHgrow(area, Priority.ALWAYS);
    var paper = new HBox(gutter, area);
    paper.getStyleClass().add("paper");
    VBox.setVgrow(paper, Priority.ALWAYS);
    said.setId("said");
    said.setMinWidth(0);
    getStyleClass().addAll("paper-sheet", "writing");
    getChildren().addAll(head(fromNames), paper, said, buttons(saveAs));
    following = model.said().subscribe(this::say);
  }

  private HBox head(Runnable fromNames) {
    var title = new Label();
    title.getStyleClass().add("sheet-title");
    title
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> fileName().orElse(texts.get("naming.draft")), model.file()));
    var unsaved = new Label(texts.get("naming.unsaved"));
    unsaved.getStyleClass().add("unsaved");
    unsaved.visibleProperty().bind(model.changed());
    var room = new Region();
    HBox.setHgrow(room, Priority.ALWAYS);
    var names = new Button(texts.get("naming.fromNames"));
    names.setId("from-names");
    names.setMinWidth(USE_PREF_SIZE);
    names.setOnAction(_ -> fromNames.run());
    var head = new HBox(title, unsaved, room, names);
    head.getStyleClass().add("in-line");
    return head;
  }

  private FlowPane buttons(Runnable saveAs) {
    var save = new Button();
    save.setId("save");
    save.getStyleClass().add("does-it");
    save.setMnemonicParsing(false);
    save.textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    fileName()
                        .map(name -> texts.get("naming.save", name))
                        .orElse(texts.get("naming.saveNot")),
                model.file()));
    save.disableProperty().bind(model.canSave().not());
    save.setOnAction(_ -> model.save());
    var elsewhere = new Button(texts.get("naming.saveAs"));
    elsewhere.setId("save-as");
    elsewhere.setOnAction(_ -> saveAs.run());
    var back = new Button(texts.get("naming.revert"));
    back.disableProperty().bind(model.changed().not());
    back.setOnAction(_ -> model.revert());
    var buttons = new FlowPane(save, elsewhere, back);
    buttons.getStyleClass().add("in-lines");
    return buttons;
  }

  private Optional<String> fileName() {
    return model.file().get().map(file -> file.getFileName().toString());
  }

  private void say(Optional<ConventionModel.Said> now) {
    said.setText(now.map(ConventionModel.Said::what).orElse(""));
    said.setVisible(now.isPresent());
    said.setManaged(now.isPresent());
    said.setStyleClasses(
        now.filter(ConventionModel.Said::needsAPerson).isPresent() ? "needs" : "fine");
  }

  TextArea area() {
    return area;
  }

  void mark(List<Finding> findings) {
    gutter.mark(findings);
  }

  /** Puts the keys at the finding's place in the text. */
  void goTo(Finding finding) {
    if (finding.line() <= 0) {
      return;
    }
    var text = area.getText();
    var from = 0;
    for (var line = 1; line < finding.line() && from >= 0; line++) {
      from = text.indexOf('\n', from) + 1;
    }
    var end = text.indexOf('\n', from);
    var last = end < 0 ? text.length() : end;
    area.requestFocus();
    area.selectRange(last, Math.min(from + Math.max(0, finding.column() - 1), last));
  }

  void dispose() {
    gutter.dispose();
    following.unsubscribe();
    area.textProperty().unbindBidirectional(model.text());
  }
}
