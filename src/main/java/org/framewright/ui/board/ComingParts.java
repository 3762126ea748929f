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

  /**
   * @param place among all that was in the pane; what stood before it is there when it comes
   */
  private record Part(Pane of, int place, Node node) {}

  /**
   * Takes out what is in a pane; it comes back after what was taken out before.
   *
   * @param kept stays: what has the keys, say, which nothing can have that is in no window
   */
  void takeFrom(Pane pane, Node... kept) {
    var all = List.copyOf(pane.getChildren());
    var staying = List.of(kept);
    for (int place = 0; place < all.size(); place++) {
      if (!staying.contains(all.get(place))) {
        missing.add(new Part(pane, place, all.get(place)));
      }
    }
    pane.getChildren().retainAll(staying);
  }

  boolean areAllThere() {
    return missing.isEmpty();
  }

  /** Puts the next part back; nothing happens where none is missing. */
  void bringNext() {
    var next = missing.poll();
    if (next != null) {
      next.of().getChildren().add(next.place(), next.node());
    }
  }
}
