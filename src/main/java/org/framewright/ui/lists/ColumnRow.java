package org.framewright.ui.lists;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.framewright.ui.look.WrappedText;

/**
 * A column of the file turned into a line: its heading, what it is here, and its first cells, each
 * below the number of its line. The row of words above has the same places.
 */
final class ColumnRow extends HBox {
  private final WrappedText heading = new WrappedText("column-word");
  private final List<WrappedText> cells = new ArrayList<>();
  private final Node use;

  ColumnRow(Node use) {
    this.use = use;
    getStyleClass().add("column-row");
    heading.getStyleClass().add("column-heading");
    heading.setMostLines(2);
    setPrefWidth(1);
    setMinWidth(0);
    getChildren().addAll(heading, use);
  }

  /** Shows a column, and so many of its cells. */
  void show(String title, List<String> texts, int shown) {
    heading.setText(title);
    while (cells.size() < shown) {
      cells.add(cell());
    }
    while (cells.size() > shown) {
      cells.removeLast();
    }
    if (getChildren().size() != shown + 2) {
      getChildren().setAll(heading, use);
      getChildren().addAll(cells);
    }
    for (int i = 0; i < shown; i++) {
      cells.get(i).setText(i < texts.size() ? texts.get(i) : "");
    }
  }

  private static WrappedText cell() {
    var cell = new WrappedText("column-cell");
    cell.setMostLines(1);
    cell.setPrefWidth(1);
    cell.setMinWidth(0);
    HBox.setHgrow(cell, Priority.ALWAYS);
    return cell;
  }
}
