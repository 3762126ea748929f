package org.framewright.ui.board;

import java.util.List;
import javafx.geometry.Dimension2D;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Region;
import org.framewright.frames.Frame;
import org.framewright.ui.look.FittingPane;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;

/**
 * The last frame of the setup on set, as large as its place lets it be, in the corner where the eye
 * begins. Where that leaves room beside it, the frames before stand there.
 */
final class SetPictures extends Region {
  private static final int LARGE_EDGE = 1400;
  private static final int BEFORE_EDGE = 500;
  private static final int MOST_BEFORE = 2;

  /** From this part of the picture's width on, room beside it is used. */
  private static final double USEFUL = 0.3;

  /** Portrait, as garments are mostly shot; until a frame says otherwise. */
  private static final double FIRST_SHAPE = 2.0 / 3;

  private final Texts texts;
  private final FramePictures pictures;
  private final ImageView large = view();
  private final List<ImageView> before = List.of(view(), view());
  private final List<Label> captions = List.of(new Label(), new Label());
  private final Label waiting = new Label();
  private double shape = FIRST_SHAPE;

  SetPictures(Texts texts, FramePictures pictures) {
    this.texts = texts;
    this.pictures = pictures;
    waiting.getStyleClass().add("first-frame");
    waiting.setText(texts.get("board.noFrameYet"));
    captions.forEach(caption -> caption.getStyleClass().add("frame-before"));
    captions.get(0).setText(texts.get("board.before.one"));
    captions.get(1).setText(texts.get("board.before.two"));
    getChildren().addAll(waiting, large);
    getChildren().addAll(before);
    getChildren().addAll(captions);
    large.imageProperty().subscribe(this::requestLayout);
    before.forEach(each -> each.imageProperty().subscribe(this::requestLayout));
    setMinSize(0, 0);
  }

  private static ImageView view() {
    var view = new ImageView();
    view.setPreserveRatio(true);
    view.setSmooth(true);
    return view;
  }

  /**
   * Shows one of the latest frames, and those before it.
   *
   * @param latest newest first
   * @param looked which of them is looked at
   */
  void show(List<Frame> latest, int looked, boolean onSet) {
    waiting.setVisible(onSet && latest.isEmpty());
    if (looked >= latest.size()) {
      pictures.clear(large);
    } else {
      pictures.show(latest.get(looked), LARGE_EDGE, large);
      large.setAccessibleText(texts.get("board.lastFrame", name(latest.get(looked))));
    }
    for (int i = 0; i < MOST_BEFORE; i++) {
      int at = looked + 1 + i;
      if (at < latest.size()) {
        pictures.show(latest.get(at), BEFORE_EDGE, before.get(i));
      } else {
        pictures.clear(before.get(i));
      }
    }
  }

  static String name(Frame frame) {
    return frame.primary().path().getFileName().toString();
  }

  /** The width of a frame by its height. */
  double shape() {
    return shape;
  }

  /** How many pixels a picture of that shape has in a place. */
  static double fitted(double shape, double width, double height) {
    double fits = Math.min(width, height * shape);
    return fits <= 0 ? 0 : fits * fits / shape;
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double height = getHeight();
    var image = large.getImage();
    if (image != null) {
      shape = image.getWidth() / image.getHeight();
    }
    var size = size(large, width, height);
    put(large, 0, 0, size);
    layoutWaiting(width, height);
    double gap = image == null ? 0 : 0.8 * waiting.getFont().getSize();
    double left = size.getWidth() + gap;
    double room = width - left;
    boolean useful = image != null && room >= USEFUL * size.getWidth();
    double top = 0;
    for (int i = 0; i < MOST_BEFORE; i++) {
      var caption = captions.get(i);
      double line = caption.prefHeight(-1);
      double share = (size.getHeight() - top) / (MOST_BEFORE - i) - line;
      boolean shown = useful && before.get(i).getImage() != null && share > 3 * line;
      before.get(i).setVisible(shown);
      caption.setVisible(shown);
      if (shown) {
        var fitting = size(before.get(i), room, share);
        put(before.get(i), left, top, fitting);
        caption.resizeRelocate(left, top + fitting.getHeight(), room, line);
        top += fitting.getHeight() + line;
      }
    }
  }

  private void layoutWaiting(double width, double height) {
    double place = Math.min(width, height * shape);
    waiting.resizeRelocate(0, 0, place, place / shape);
  }

  private static void put(ImageView view, double x, double y, Dimension2D size) {
    view.setFitWidth(size.getWidth());
    view.setFitHeight(size.getHeight());
    view.relocate(x, y);
  }

  private static Dimension2D size(ImageView view, double width, double height) {
    var image = view.getImage();
    if (image == null) {
      return new Dimension2D(0, 0);
    }
    return FittingPane.fitted(image, width, height);
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
