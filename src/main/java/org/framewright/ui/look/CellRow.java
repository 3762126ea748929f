package org.framewright.ui.look;

import javafx.scene.Node;
import javafx.scene.layout.HBox;

/** What a line of a list shows, side by side: as wide as the list, never wider. */
public final class CellRow extends HBox {
  public CellRow(Node... parts) {
    super(parts);
    setMinWidth(0);
    setPrefWidth(1);
  }
}
