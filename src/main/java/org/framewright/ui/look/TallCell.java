package org.framewright.ui.look;

import javafx.scene.control.ListCell;

/** A line of a list that is as high as what it shows needs at the list's width. */
public abstract class TallCell<T> extends ListCell<T> {
  @Override
  protected double computePrefHeight(double width) {
    return getGraphic() == null
        ? super.computePrefHeight(width)
        : snappedTopInset()
            + snappedBottomInset()
            + getGraphic().prefHeight(width - snappedLeftInset() - snappedRightInset());
  }
}
