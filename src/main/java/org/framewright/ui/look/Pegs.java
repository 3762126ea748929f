package org.framewright.ui.look;

import java.util.List;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/**
 * One peg for each frame wanted: full once the frame is there. Past sixteen, one peg for several.
 */
public final class Pegs extends HBox {
  private static final int MOST = 16;

  private boolean filling;

  /** No pegs. */
  public Pegs() {
    getStyleClass().add("pegs");
  }

  /** The pegs share the width that there is. */
  public Pegs filling() {
    filling = true;
    return this;
  }

  /** Shows how many frames there are of those wanted; no peg where none is wanted. */
  public void show(int frames, int wanted) {
    var pegs = Math.min(wanted, MOST);
    while (getChildren().size() < pegs) {
      var peg = new Region();
      HBox.setHgrow(peg, filling ? Priority.ALWAYS : Priority.NEVER);
      getChildren().add(peg);
    }
    getChildren().remove(pegs, getChildren().size());
    for (var i = 1; i <= pegs; i++) {
      // Of several frames to a peg, all must be there before it is full.
      var full = (long) frames * pegs >= (long) i * wanted;
      var style = List.of("peg", full ? "full" : "empty");
      var peg = getChildren().get(i - 1);
      if (!peg.getStyleClass().equals(style)) {
        peg.getStyleClass().setAll(style);
      }
    }
  }
}
