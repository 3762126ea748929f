package org.framewright.ui.look;

import javafx.geometry.Dimension2D;
import javafx.scene.image.Image;
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
    var size = fitted(image, getWidth(), getHeight());
    view.setFitWidth(size.getWidth());
    view.setFitHeight(size.getHeight());
    view.relocate((getWidth() - size.getWidth()) / 2, (getHeight() - size.getHeight()) / 2);
  }

  /** The size at which a place shows a picture whole, never larger than it is. */
  public static Dimension2D fitted(Image image, double width, double height) {
    var scale = Math.min(1, Math.min(width / image.getWidth(), height / image.getHeight()));
    return new Dimension2D(
        Math.max(1, image.getWidth() * scale), Math.max(1, image.getHeight() * scale));
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
