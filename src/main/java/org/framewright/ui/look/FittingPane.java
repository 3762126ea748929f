package org.framewright.ui.look;

import javafx.scene.image.ImageView;
import javafx.scene.layout.Pane;

/** Shows a picture whole, as large as the pane lets it, never larger than it is. */
public final class FittingPane extends Pane {
  private final ImageView view;

  /** A pane around a view. */
  public FittingPane(ImageView view) {
    this.view = view;
    view.setPreserveRatio(true);
    view.setSmooth(true);
    getChildren().add(view);
    view.imageProperty().subscribe(this::requestLayout);
  }

  @Override
  protected void layoutChildren() {
    var image = view.getImage();
    if (image == null) {
      return;
    }
    var scale =
        Math.min(1, Math.min(getWidth() / image.getWidth(), getHeight() / image.getHeight()));
    var width = Math.max(1, image.getWidth() * scale);
    var height = Math.max(1, image.getHeight() * scale);
    view.setFitWidth(width);
    view.setFitHeight(height);
    view.relocate((getWidth() - width) / 2, (getHeight() - height) / 2);
  }

  @Override
  protected double computePrefWidth(double height) {
    return 0;
  }

  @Override
  protected double computePrefHeight(double width) {
    return 0;
  }
}
