package org.framewright.ui.command;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.collections.FXCollections;
import javafx.collections.transformation.FilteredList;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What can be done here, each with its keys, as a list that is narrowed by typing. */
public final class KeyList {
  private static final double FAINT = 0.4;

  private final Texts texts;
  private final FilteredList<Command> shown;
  private final ListView<Command> list = new ListView<>();

  /** A list of the given commands. */
  public KeyList(List<Command> commands, Texts texts) {
    this.texts = texts;
    shown = new FilteredList<>(FXCollections.observableArrayList(commands));
    list.setItems(shown);
    list.setCellFactory(_ -> new Row(texts));
    list.setId("key-sheet");
    list.setAccessibleText(texts.get("keys.title"));
    list.setFocusTraversable(false);
  }

  public Node node() {
    return list;
  }

  /** Shows only what has these words, or this key. */
  public void type(String typed) {
    shown.setPredicate(command -> matches(command, typed, texts));
  }

  public int size() {
    return shown.size();
  }

  /** The place of the chosen line; -1 if none is. */
  public int at() {
    return list.getSelectionModel().getSelectedIndex();
  }

  /** Chooses a line; none by -1. */
  public void choose(int at) {
    if (at < 0 || shown.isEmpty()) {
      list.getSelectionModel().clearSelection();
      return;
    }
    list.getSelectionModel().select(Math.min(at, shown.size() - 1));
    list.scrollTo(at);
  }

  /** Runs whenever another line is chosen, or none. */
  public void onChosen(Runnable then) {
    list.getSelectionModel().selectedItemProperty().addListener((_, _, _) -> then.run());
  }

  /** Runs when a line is pressed twice by mouse. */
  public void onPressedTwice(Runnable then) {
    list.setOnMouseClicked(
        event -> {
          if (event.getClickCount() == 2 && chosen().isPresent()) {
            then.run();
          }
        });
  }

  /** What is chosen. */
  public Optional<Command> chosen() {
    return Optional.ofNullable(list.getSelectionModel().getSelectedItem());
  }

  /** Every word typed is found in the text, or the typed is the key. */
  static boolean matches(Command command, String typed, Texts texts) {
    var wanted = typed.toLowerCase(Locale.ROOT).strip();
    return command.keys().stream()
            .anyMatch(key -> Keys.text(key, texts).toLowerCase(Locale.ROOT).equals(wanted))
        || TypedWords.of(typed).areIn(command.text());
  }

  private static final class Row extends LineCell<Command> {
    private final Texts texts;
    private final WrappedText text = new WrappedText();
    private final Label key = new Label();
    private final HBox row = new HBox(key, text);

    Row(Texts texts) {
      this.texts = texts;
      key.getStyleClass().add("key");
      key.setMinWidth(Region.USE_PREF_SIZE);
      row.getStyleClass().add("key-row");
      text.setMostLines(2);
      text.setMinWidth(0);
      HBox.setHgrow(text, Priority.ALWAYS);
      setMinHeight(Region.USE_PREF_SIZE);
      setPrefWidth(0);
    }

    @Override
    protected void showLine(Command command) {
      text.setText(command.text());
      key.setText(command.keysText(texts));
      row.setDisable(!command.enabled().get());
      // Wrapped text is drawn by itself, so it is told that it is as faint as the key beside it.
      text.setOpacity(command.enabled().get() ? 1 : FAINT);
      setAccessibleText(texts.apart(command.text(), key.getText()));
      setGraphic(row);
    }
  }
}
