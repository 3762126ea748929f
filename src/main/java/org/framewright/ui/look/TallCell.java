package org.framewright.ui.look;

/** A line of a list that is as high as what it shows needs at the list's width. */
public abstract class TallCell<T> extends LineCell<T> {
  @Override
  protected double computePrefHeight(double width) {
    return getGraphic() == null
        ? super.computePrefHeight(width)
        : snappedTopInset()
            + snappedBottomInset()
            + getGraphic().prefHeight(width - snappedLeftInset() - snappedRightInset());
  }
}
