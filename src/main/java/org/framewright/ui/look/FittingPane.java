package org.framewright.ui.look;

import javafx.geometry.Dimension2D;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Pane;

/** Shows a picture whole, as large as the pane lets it. */
public final class FittingPane extends Pane {
  private final ImageView view;
  private final double most;

  /** A pane around a view; never larger than the picture is. */
  public FittingPane(ImageView view) {
    this(view, 1);
  }

  /**
   * A pane around a view.
   *
   * @param most how many times larger than it is a picture may be shown, at least 1
   */
  public FittingPane(ImageView view, double most) {
    this.view = view;
    this.most = most;
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
    var size = fitted(image, getWidth(), getHeight(), most);
    view.setFitWidth(size.getWidth());
    view.setFitHeight(size.getHeight());
    view.relocate((getWidth() - size.getWidth()) / 2, (getHeight() - size.getHeight()) / 2);
  }

  /** The size at which a place shows a picture whole, never larger than it is. */
  public static Dimension2D fitted(Image image, double width, double height) {
    return fitted(image, width, height, 1);
  }

  private static Dimension2D fitted(Image image, double width, double height, double most) {
    var scale = Math.min(most, Math.min(width / image.getWidth(), height / image.getHeight()));
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
