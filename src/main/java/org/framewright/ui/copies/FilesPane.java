package org.framewright.ui.copies;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.ContextMenuEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;

/** All files of a comparison, a line for each place, filtered by how they stand. */
final class FilesPane extends VBox {
  private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");

  /** All totals in one line where there is room. */
  private static final double WIDE = 700;

  private final CopiesModel model;
  private final Texts texts;
  private final ListView<FileLine> list = new ListView<>();
  private final TextField filter = new TextField();
  private final Map<FileLine.State, Button> totals = new EnumMap<>(FileLine.State.class);
  private final Subscription following;

  FilesPane(CopiesModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    var row = new FlowPane();
    row.getStyleClass().add("file-totals");
    row.setMinWidth(0);
    row.setPrefWrapLength(WIDE);
    HBox.setHgrow(row, Priority.ALWAYS);
    for (var state : FileLine.State.values()) {
      var button = total(state);
      totals.put(state, button);
      row.getChildren().add(button);
    }
    filter.setId("file-filter");
    filter.setPromptText(texts.get("copies.filter"));
    filter.setAccessibleText(texts.get("copies.filter"));
    filter.setPrefColumnCount(12);
    filter.setMinWidth(Region.USE_PREF_SIZE);
    filter.textProperty().bindBidirectional(model.filter());
    var head = new HBox(row, filter);
    head.getStyleClass().add("files-head");
    list.setId("files");
    list.setItems(model.lines());
    list.setPlaceholder(new Label(texts.get("copies.noFiles")));
    list.setAccessibleText(texts.get("copies.files.list"));
    VBox.setVgrow(list, Priority.ALWAYS);
    getChildren().addAll(head, list);
    getStyleClass().addAll("paper-sheet", "files-sheet");
    following =
        Subscription.combine(
            model.counts().subscribe(_ -> show()), model.only().subscribe(_ -> show()));
  }

  /**
   * Lets a person say of a file that it need not be kept, by its button or its menu.
   *
   * @param waive about the line that is chosen
   */
  void offer(Command waive) {
    list.setCellFactory(_ -> new FileCell(texts, waive));
    var menu = new ContextMenu(CommandControls.item(waive));
    // Asked for on a line, the menu is of that one; other lines have none.
    list.addEventFilter(
        ContextMenuEvent.CONTEXT_MENU_REQUESTED,
        event -> {
          for (var at = event.getTarget() instanceof Node node ? node : null;
              at != null;
              at = at.getParent()) {
            if (at instanceof ListCell<?> cell && !cell.isEmpty()) {
              list.getSelectionModel().clearAndSelect(cell.getIndex());
            }
          }
          list.setContextMenu(waive.enabled().get() ? menu : null);
        });
  }

  /** The line that is chosen, if one is. */
  FileLine chosen() {
    // A line that was replaced where it stands is not the item any more that was selected.
    int at = list.getSelectionModel().getSelectedIndex();
    return at < 0 || at >= list.getItems().size() ? null : list.getItems().get(at);
  }

  /** Gives the keys to the list, and the first line if none is chosen. */
  void takeKeys() {
    list.requestFocus();
    if (chosen() == null) {
      list.getSelectionModel().selectFirst();
    }
  }

  private Button total(FileLine.State state) {
    var mark = new FileMark();
    mark.show(state);
    var button = new Button("", mark);
    button.setId("files-" + state.word());
    button.getStyleClass().addAll("total", state.word());
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(_ -> turn(state));
    return button;
  }

  /** Lets the files of one state through, or all again. */
  void turn(FileLine.State state) {
    model
        .only()
        .set(model.only().get().equals(Optional.of(state)) ? Optional.empty() : Optional.of(state));
  }

  private void show() {
    totals.forEach(
        (state, button) -> {
          int count = model.counts().get().getOrDefault(state, 0);
          button.setText(texts.get("copies.total." + state.word(), count));
          button.setVisible(count > 0);
          button.setManaged(count > 0);
          button.pseudoClassStateChanged(CHOSEN, model.only().get().equals(Optional.of(state)));
        });
  }

  ListView<FileLine> list() {
    return list;
  }

  TextField filter() {
    return filter;
  }

  void dispose() {
    following.unsubscribe();
    filter.textProperty().unbindBidirectional(model.filter());
    list.setItems(null);
  }
}
