package org.framewright.ui.command;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;

/** The list of all that can be done here, with its keys: searched by typing, done with Enter. */
public final class KeySheet {
  private final KeyList keys;
  private final TextField search = new TextField();
  private final VBox box;

  /** A sheet of the given commands. */
  public KeySheet(List<Command> commands, Texts texts) {
    keys = new KeyList(commands, texts);
    keys.choose(0);
    search.setId("key-search");
    search.setPromptText(texts.get("keys.search"));
    search.setAccessibleText(texts.get("keys.search"));
    search
        .textProperty()
        .addListener(
            (_, _, typed) -> {
              keys.type(typed);
              keys.choose(0);
            });
    search.addEventFilter(KeyEvent.KEY_PRESSED, this::move);
    box = new VBox(search, keys.node());
    box.getStyleClass().add("key-sheet");
    VBox.setVgrow(keys.node(), Priority.ALWAYS);
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
    keys.chosen().ifPresent(Command::fire);
  }

  private void move(KeyEvent event) {
    var by = event.getCode() == KeyCode.DOWN ? 1 : event.getCode() == KeyCode.UP ? -1 : 0;
    if (by != 0 && keys.size() > 0) {
      keys.choose(Math.clamp(keys.at() + by, 0, keys.size() - 1));
      event.consume();
    }
  }
}
