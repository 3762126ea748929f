package org.framewright.ui.look;

import javafx.scene.Node;
import javafx.scene.layout.VBox;

/** What a line of a list shows, one above the other: as wide as the list, never wider. */
public final class CellBox extends VBox {
  public CellBox(Node... parts) {
    super(parts);
    setMinWidth(0);
    setPrefWidth(1);
  }
}
