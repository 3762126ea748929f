package org.framewright.ui;

import java.util.List;
import javafx.event.Event;
import javafx.event.EventType;
import javafx.scene.Node;
import javafx.scene.Scene;
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

  /** Digits that a scanner types where the keys go, faster than any does; from any thread. */
  static void scan(Scene scene, String digits) throws Exception {
    OnInterface.onInterface(
        () -> {
          for (int i = 0; i < digits.length(); i++) {
            char c = digits.charAt(i);
            write(scene, KeyCode.valueOf("DIGIT" + c), "" + c);
          }
          write(scene, KeyCode.ENTER, "\r");
          return digits;
        });
  }

  private static void write(Scene scene, KeyCode key, String text) {
    fire(scene, KeyEvent.KEY_PRESSED, key, "");
    fire(scene, KeyEvent.KEY_TYPED, KeyCode.UNDEFINED, text);
    fire(scene, KeyEvent.KEY_RELEASED, key, "");
  }

  private static void fire(Scene scene, EventType<KeyEvent> type, KeyCode key, String text) {
    var to = scene.getFocusOwner() == null ? scene : scene.getFocusOwner();
    Event.fireEvent(to, new KeyEvent(type, text, "", key, false, false, false, false));
  }
}
