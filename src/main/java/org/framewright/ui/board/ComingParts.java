package org.framewright.ui.board;

import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import javafx.scene.Node;
import javafx.scene.layout.Pane;

/**
 * Parts of a page that were taken out before it came to the window, and come back one by one. The
 * toolkit styles what joins a window on the interface thread alone, and a page at once would hold
 * it for long.
 */
final class ComingParts {
  private final Queue<Part> missing = new ArrayDeque<>();

  private record Part(Pane of, Node node) {}

  /** Takes out all that is in a pane; it comes back after what was taken out before. */
  void takeFrom(Pane pane) {
    List.copyOf(pane.getChildren()).forEach(node -> missing.add(new Part(pane, node)));
    pane.getChildren().clear();
  }

  boolean areAllThere() {
    return missing.isEmpty();
  }

  /** Puts the next part back; nothing happens where none is missing. */
  void bringNext() {
    var next = missing.poll();
    if (next != null) {
      next.of().getChildren().add(next.node());
    }
  }
}
