package org.framewright.ui.command;

import javafx.scene.Node;
import javafx.scene.TraversalDirection;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** Where the keys go. A node does not always know of the focus within it; its scene does. */
public final class KeyFocus {
  private KeyFocus() {}

  /** Whether the keys go to a node or to one inside it. */
  public static boolean isWithin(Node part) {
    var scene = part.getScene();
    Node node = scene == null ? null : scene.getFocusOwner();
    while (node != null && !node.equals(part)) {
      node = node.getParent();
    }
    return node != null;
  }

  /**
   * Lets Tab lead out of a text of several lines, as out of any control. Nothing that is written in
   * this app has a tab in it.
   */
  public static void leaveByTab(TextArea area) {
    area.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.TAB && !event.isShortcutDown()) {
            area.requestFocusTraversal(
                event.isShiftDown() ? TraversalDirection.PREVIOUS : TraversalDirection.NEXT);
            event.consume();
          }
        });
  }
}
