package org.framewright.ui.look;

import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** Up and down go through a list while one types what is looked for in it. */
public final class ListWalk {
  private ListWalk() {}

  /** Lets the arrow keys of a field choose in a list, from now on. */
  public static void of(TextField typed, ListView<?> list) {
    typed.addEventFilter(KeyEvent.KEY_PRESSED, event -> walk(list, event));
  }

  private static void walk(ListView<?> list, KeyEvent event) {
    var by = event.getCode() == KeyCode.DOWN ? 1 : event.getCode() == KeyCode.UP ? -1 : 0;
    if (by != 0 && !list.getItems().isEmpty()) {
      var at = list.getSelectionModel().getSelectedIndex() + by;
      list.getSelectionModel().select(Math.clamp(at, 0, list.getItems().size() - 1));
      list.scrollTo(Math.max(0, list.getSelectionModel().getSelectedIndex() - 3));
      event.consume();
    }
  }
}
