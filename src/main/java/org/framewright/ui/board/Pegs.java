package org.framewright.ui.board;

import java.util.List;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/**
 * One peg for each frame wanted: full once the frame is there. Past sixteen, one peg for several.
 */
final class Pegs extends HBox {
  private static final int MOST = 16;

  Pegs() {
    getStyleClass().add("pegs");
  }

  void show(ViewCount view) {
    var wanted = view.wanted().orElse(0);
    var pegs = Math.min(wanted, MOST);
    while (getChildren().size() < pegs) {
      getChildren().add(new Region());
    }
    getChildren().remove(pegs, getChildren().size());
    for (var i = 1; i <= pegs; i++) {
      // Of several frames to a peg, all must be there before it is full.
      var full = (long) view.frames() * pegs >= (long) i * wanted;
      var style = List.of("peg", full ? "full" : "empty");
      var peg = getChildren().get(i - 1);
      if (!peg.getStyleClass().equals(style)) {
        peg.getStyleClass().setAll(style);
      }
    }
  }
}
