package org.framewright.ui.help;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.css.PseudoClass;
import javafx.geometry.Orientation;
import javafx.scene.AccessibleRole;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;

/**
 * A picture of the guide, as wide as the lines of its text; pressed, as wide as the page. It is
 * never larger than it is, and read once it shows.
 */
final class PagePicture extends Region {
  /** Where a PNG says its width and its height (ISO/IEC 15948, 5.6 and 11.2.1). */
  private static final int SIZE_AT = 16;

  private static final PseudoClass LARGE = PseudoClass.getPseudoClass("large");

  private final Path file;
  private final int wide;
  private final int high;
  private final ImageView view = new ImageView();
  private double readFor;
  private boolean large;

  private PagePicture(Path file, int wide, int high) {
    this.file = file;
    this.wide = wide;
    this.high = high;
    view.setPreserveRatio(true);
    getStyleClass().add("guide-picture");
    getChildren().add(view);
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setOnMouseClicked(_ -> turn());
    setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.SPACE) {
            turn();
            event.consume();
          }
        });
  }

  /** A PNG that says what it shows in words; one that cannot be read has no height. */
  static PagePicture of(Path file, String says) {
    int wide = 0;
    int high = 0;
    try (var in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
      in.skipNBytes(SIZE_AT);
      wide = in.readInt();
      high = in.readInt();
    } catch (IOException _) {
      // Its words are below it all the same.
    }
    var picture = new PagePicture(file, Math.max(0, wide), Math.max(0, high));
    picture.setAccessibleText(says);
    return picture;
  }

  private void turn() {
    large = !large;
    pseudoClassStateChanged(LARGE, large);
    requestLayout();
  }

  private double shown(double width) {
    var room = Math.max(0, width - snappedLeftInset() - snappedRightInset());
    return Math.min(wide, room);
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected double computePrefWidth(double height) {
    return wide + snappedLeftInset() + snappedRightInset();
  }

  @Override
  protected double computePrefHeight(double width) {
    var shown = width < 0 ? wide : shown(width);
    return (wide == 0 ? 0 : Math.round(shown * high / wide))
        + snappedTopInset()
        + snappedBottomInset();
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected void layoutChildren() {
    var shown = Math.floor(shown(getWidth()));
    if (shown <= 0) {
      return;
    }
    if (shown != readFor) {
      readFor = shown;
      var window = getScene() == null ? null : getScene().getWindow();
      var pixels = shown * (window == null ? 1 : Math.max(1, window.getOutputScaleX()));
      // Made small where it is read: a view that shrinks a picture leaves out lines of letters.
      view.setImage(
          new Image(file.toUri().toString(), Math.min(wide, pixels), 0, true, true, true));
    }
    view.setFitWidth(shown);
    view.relocate(snappedLeftInset(), snappedTopInset());
  }
}
