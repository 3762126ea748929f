package org.framewright.ui;

import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** Where one types part of a setup, a frame or a command, and sees what there is. */
final class FindSheet {
  private static final double LINE = 2.4;

  private final FindModel model;
  private final TextField search = new TextField();
  private final ListView<FindModel.Line> list = new ListView<>();
  private final VBox box = new VBox(search, list);

  FindSheet(FindModel model, Texts texts) {
    this.model = model;
    search.setId("find-anything");
    search.setPromptText(texts.get("find.prompt"));
    search.setAccessibleText(texts.get("find.prompt"));
    search.textProperty().bindBidirectional(model.typed());
    search.addEventFilter(KeyEvent.KEY_PRESSED, this::move);
    search.fontProperty().subscribe(font -> list.setFixedCellSize(LINE * font.getSize()));
    list.setId("found");
    list.setFocusTraversable(false);
    list.setCellFactory(_ -> new Row(texts));
    list.setPlaceholder(WrappedText.of(texts.get("find.nothing"), "quiet"));
    list.setAccessibleText(texts.get("find.title"));
    list.getSelectionModel()
        .selectedIndexProperty()
        .addListener(
            (_, _, now) -> {
              if (now.intValue() >= 0) {
                model.chosen().set(now.intValue());
              }
            });
    model.lines().subscribe(lines -> list.getItems().setAll(lines));
    model.lines().subscribe(_ -> choose());
    model.chosen().subscribe(_ -> choose());
    VBox.setVgrow(list, Priority.ALWAYS);
    box.getStyleClass().add("find-sheet");
  }

  Node node() {
    return box;
  }

  Node focus() {
    return search;
  }

  /** Whether there is something to go to. */
  ObservableBooleanValue ready() {
    return Bindings.createBooleanBinding(() -> !model.lines().get().isEmpty(), model.lines());
  }

  /** Goes to what is chosen. */
  void go() {
    model.goal().ifPresent(found -> found.go().run());
  }

  private void choose() {
    list.getSelectionModel().select(model.chosen().get());
    list.scrollTo(Math.max(0, model.chosen().get() - 5));
  }

  private void move(KeyEvent event) {
    var by = event.getCode() == KeyCode.DOWN ? 1 : event.getCode() == KeyCode.UP ? -1 : 0;
    if (by != 0) {
      model.step(by);
      event.consume();
    }
  }

  private static final class Row extends LineCell<FindModel.Line> {
    private final Texts texts;
    private final Label kind = new Label();
    private final Label name = new Label();
    private final Label more = new Label();
    private final HBox row = new HBox(kind, name, more);

    Row(Texts texts) {
      this.texts = texts;
      row.getStyleClass().add("found-row");
      kind.getStyleClass().add("found-kind");
      more.getStyleClass().add("found-more");
      name.setMinWidth(0);
      name.setMaxWidth(Double.MAX_VALUE);
      HBox.setHgrow(name, Priority.ALWAYS);
      kind.setMinWidth(Region.USE_PREF_SIZE);
      more.setMinWidth(Region.USE_PREF_SIZE);
      setPrefWidth(0);
    }

    @Override
    protected void showLine(FindModel.Line line) {
      kind.setText(line.kind());
      name.setText(line.found().name());
      more.setText(line.found().more());
      setAccessibleText(texts.apart(line.kind(), name.getText(), more.getText()));
      setGraphic(row);
    }
  }
}
