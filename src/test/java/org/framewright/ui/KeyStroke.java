package org.framewright.ui;

import java.util.List;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/**
 * A key pressed and let go, for programs without a test's robot. Called on the interface thread.
 */
final class KeyStroke {
  private KeyStroke() {}

  static void on(Node node, KeyCode key, boolean shift) {
    node.requestFocus();
    for (var type : List.of(KeyEvent.KEY_PRESSED, KeyEvent.KEY_RELEASED)) {
      Event.fireEvent(node, new KeyEvent(type, "", "", key, shift, false, false, false));
    }
  }
}
