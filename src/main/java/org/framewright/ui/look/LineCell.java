package org.framewright.ui.look;

import javafx.scene.control.ListCell;

/** A line of a list; where there is none it shows nothing and says nothing. */
public abstract class LineCell<T> extends ListCell<T> {
  @Override
  protected final void updateItem(T line, boolean empty) {
    super.updateItem(line, empty);
    if (empty || line == null) {
      setGraphic(null);
      setTooltip(null);
      setAccessibleText("");
      showNone();
    } else {
      showLine(line);
    }
  }

  /** Shows a line: what is seen, and what is read to those who do not see it. */
  protected abstract void showLine(T line);

  /** What else is to be taken away where there is no line. */
  protected void showNone() {}
}
