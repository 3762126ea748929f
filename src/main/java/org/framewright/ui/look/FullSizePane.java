package org.framewright.ui.look;

import java.util.Optional;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import javafx.stage.Window;
import org.framewright.frames.Frame;
import org.framewright.frames.PicturePart;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * A picture at full size: one pixel of it is one of the screen. What is seen is decoded in the
 * background, with something around it; until it is there, the small picture is seen, enlarged.
 */
public final class FullSizePane extends Region {
  /** So many times what is seen is decoded at once, in each direction. */
  private static final double AROUND = 2;

  /** Reads a part of a frame's picture. */
  @FunctionalInterface
  public interface Parts {
    /** The part around a spot, at most so large in pixels. */
    Optional<PicturePart> of(Frame frame, double x, double y, int width, int height);
  }

  private record Wanted(Frame frame, Spot spot, int width, int height) {}

  private record Found(Wanted wanted, Optional<PicturePart> part) {}

  private final ImageView small = new ImageView();
  private final ImageView sharp = new ImageView();
  private final Newest<Wanted, Found> reading;
  private Optional<Frame> frame = Optional.empty();
  private Spot spot = Spot.MIDDLE;
  private Optional<PicturePart> part = Optional.empty();
  private Optional<Wanted> asked = Optional.empty();

  /** Shows nothing yet. */
  public FullSizePane(Tasks tasks, Parts parts) {
    getStyleClass().add("full-size");
    reading =
        new Newest<>(
            tasks,
            wanted ->
                new Found(
                    wanted,
                    parts.of(
                        wanted.frame(),
                        wanted.spot().x(),
                        wanted.spot().y(),
                        wanted.width(),
                        wanted.height())),
            this::found,
            // A picture that cannot be decoded stays as small as it is.
            _ -> {});
    getChildren().addAll(small, sharp);
    var edge = new Rectangle();
    edge.widthProperty().bind(widthProperty());
    edge.heightProperty().bind(heightProperty());
    setClip(edge);
    setMinSize(0, 0);
    setVisible(false);
  }

  /** Shows a frame around a spot; the small picture stands in for it. */
  public void show(Frame now, Image standIn, Spot around) {
    if (frame.filter(now::equals).isEmpty()) {
      frame = Optional.of(now);
      part = Optional.empty();
      asked = Optional.empty();
      sharp.setImage(null);
    }
    small.setImage(standIn);
    spot = around;
    setVisible(true);
    requestLayout();
  }

  /** Lets go of the picture. */
  public void hide() {
    frame = Optional.empty();
    part = Optional.empty();
    asked = Optional.empty();
    reading.clear();
    small.setImage(null);
    sharp.setImage(null);
    setVisible(false);
  }

  private void found(Found found) {
    if (frame.filter(found.wanted().frame()::equals).isEmpty()) {
      return;
    }
    part = found.part().or(() -> part);
    found.part().ifPresent(now -> sharp.setImage(FramePictures.image(now.picture())));
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    if (frame.isEmpty() || getWidth() < 1 || getHeight() < 1) {
      return;
    }
    // Pixels of the screen, of which a display of high density has several to a unit.
    double density =
        Optional.ofNullable(getScene().getWindow()).map(Window::getOutputScaleX).orElse(1.0);
    double width = getWidth() * density;
    double height = getHeight() * density;
    if (part.isEmpty()) {
      placeWhole();
      ask(width, height);
      return;
    }
    var known = part.get();
    double left = offset(spot.x(), known.fullWidth(), width);
    double top = offset(spot.y(), known.fullHeight(), height);
    place(small, -left, -top, known.fullWidth(), known.fullHeight(), density);
    place(
        sharp,
        known.left() - left,
        known.top() - top,
        known.picture().getWidth(),
        known.picture().getHeight(),
        density);
    boolean covers =
        known.left() <= Math.max(0, left)
            && known.top() <= Math.max(0, top)
            && known.left() + known.picture().getWidth()
                >= Math.min(known.fullWidth(), left + width)
            && known.top() + known.picture().getHeight()
                >= Math.min(known.fullHeight(), top + height);
    if (!covers) {
      ask(width, height);
    }
  }

  /** Where the window begins in the picture; a picture smaller than it lies in its middle. */
  private static double offset(double middle, int full, double window) {
    return full <= window
        ? (full - window) / 2
        : Math.clamp(middle * full - window / 2, 0, full - window);
  }

  private void ask(double width, double height) {
    var wanted =
        new Wanted(
            frame.orElseThrow(),
            spot,
            (int) Math.ceil(width * AROUND),
            (int) Math.ceil(height * AROUND));
    if (asked.filter(wanted::equals).isEmpty()) {
      asked = Optional.of(wanted);
      reading.offer(wanted);
    }
  }

  private void placeWhole() {
    var image = small.getImage();
    if (image != null) {
      double scale = Math.min(getWidth() / image.getWidth(), getHeight() / image.getHeight());
      double width = image.getWidth() * scale;
      double height = image.getHeight() * scale;
      place(small, (getWidth() - width) / 2, (getHeight() - height) / 2, width, height, 1);
    }
  }

  private static void place(
      ImageView view, double x, double y, double width, double height, double density) {
    view.setFitWidth(width / density);
    view.setFitHeight(height / density);
    view.relocate(x / density, y / density);
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
