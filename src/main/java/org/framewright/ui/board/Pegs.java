package org.framewright.ui.board;

import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/**
 * One peg for each frame wanted: full once the frame is there. Past sixteen, one peg for several.
 */
final class Pegs extends HBox {
  private static final int MOST = 16;

  Pegs(ViewCount view) {
    getStyleClass().add("pegs");
    var wanted = view.wanted().orElse(0);
    var pegs = Math.min(wanted, MOST);
    for (var i = 1; i <= pegs; i++) {
      var peg = new Region();
      // Of several frames to a peg, all must be there before it is full.
      var full = (long) view.frames() * pegs >= (long) i * wanted;
      peg.getStyleClass().setAll("peg", full ? "full" : "empty");
      getChildren().add(peg);
    }
  }
}
