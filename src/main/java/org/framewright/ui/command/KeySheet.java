package org.framewright.ui.command;

import java.util.List;
import java.util.Locale;
import javafx.collections.FXCollections;
import javafx.collections.transformation.FilteredList;
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

/** The list of all that can be done here, with its keys: searched by typing, done with Enter. */
public final class KeySheet {
  private final FilteredList<Command> shown;
  private final TextField search = new TextField();
  private final ListView<Command> list = new ListView<>();
  private final VBox box;

  /** A sheet of the given commands. */
  public KeySheet(List<Command> commands, Texts texts) {
    shown = new FilteredList<>(FXCollections.observableArrayList(commands));
    list.setItems(shown);
    list.setCellFactory(_ -> new Row(texts));
    list.setId("key-sheet");
    list.setAccessibleText(texts.get("keys.title"));
    list.getSelectionModel().selectFirst();
    list.setFocusTraversable(false);
    search.setId("key-search");
    search.setPromptText(texts.get("keys.search"));
    search.setAccessibleText(texts.get("keys.search"));
    search
        .textProperty()
        .addListener(
            (_, _, typed) -> {
              shown.setPredicate(command -> matches(command, typed, texts));
              list.getSelectionModel().selectFirst();
            });
    search.addEventFilter(KeyEvent.KEY_PRESSED, this::move);
    box = new VBox(search, list);
    box.getStyleClass().add("key-sheet");
    VBox.setVgrow(list, Priority.ALWAYS);
  }

  /** The sheet's controls. */
  public Node node() {
    return box;
  }

  /** Where one types. */
  public Node focus() {
    return search;
  }

  /** Does the chosen command. */
  public void fire() {
    var chosen = list.getSelectionModel().getSelectedItem();
    if (chosen != null) {
      chosen.fire();
    }
  }

  /** Every word typed is found in the text, or the typed is the key. */
  static boolean matches(Command command, String typed, Texts texts) {
    var wanted = typed.toLowerCase(Locale.ROOT).strip();
    return command.keys().stream()
            .anyMatch(key -> Keys.text(key, texts).toLowerCase(Locale.ROOT).equals(wanted))
        || TypedWords.of(typed).areIn(command.text());
  }

  private void move(KeyEvent event) {
    var by = event.getCode() == KeyCode.DOWN ? 1 : event.getCode() == KeyCode.UP ? -1 : 0;
    if (by != 0 && !shown.isEmpty()) {
      var at = Math.clamp(list.getSelectionModel().getSelectedIndex() + by, 0, shown.size() - 1);
      list.getSelectionModel().select(at);
      list.scrollTo(at);
      event.consume();
    }
  }

  private static final class Row extends LineCell<Command> {
    private final Texts texts;
    private final Label text = new Label();
    private final Label key = new Label();
    private final HBox row = new HBox(key, text);

    Row(Texts texts) {
      this.texts = texts;
      key.getStyleClass().add("key");
      key.setMinWidth(Region.USE_PREF_SIZE);
      row.getStyleClass().add("key-row");
      setMinHeight(Region.USE_PREF_SIZE);
    }

    @Override
    protected void showLine(Command command) {
      text.setText(command.text());
      key.setText(command.keysText(texts));
      row.setDisable(!command.enabled().get());
      setAccessibleText(texts.apart(command.text(), key.getText()));
      setGraphic(row);
    }
  }
}
