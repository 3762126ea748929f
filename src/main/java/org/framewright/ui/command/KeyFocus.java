package org.framewright.ui.command;

import javafx.scene.Node;

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
}
