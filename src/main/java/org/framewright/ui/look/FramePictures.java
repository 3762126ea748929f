package org.framewright.ui.look;

import java.awt.image.BufferedImage;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.BiFunction;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;

/**
 * The pictures of frames on the interface: read in the background, the latest asked for shown, a
 * bounded number of pixels kept. Called on the interface thread.
 */
public final class FramePictures {
  private static final long KEPT_PIXELS = 12_000_000;

  private record Key(FrameId frame, int edge) {}

  private final Executor background;
  private final Executor ui;
  private final BiFunction<Frame, Integer, Optional<BufferedImage>> reader;
  private final Map<Key, Image> kept = new LinkedHashMap<>(64, 0.75f, true);
  private final Map<ImageView, Key> wanted = new java.util.WeakHashMap<>();
  private long pixels;

  /**
   * Pictures by {@code reader}, which is asked for a frame and a longest edge in pixels, on the
   * background executor.
   */
  public FramePictures(
      Executor background,
      Executor ui,
      BiFunction<Frame, Integer, Optional<BufferedImage>> reader) {
    this.background = background;
    this.ui = ui;
    this.reader = reader;
  }

  /** Shows a frame in a view, now if it is kept, else as soon as it was read. */
  public void show(Frame frame, int edge, ImageView view) {
    var key = new Key(frame.id(), edge);
    if (key.equals(wanted.get(view)) && view.getImage() != null) {
      return;
    }
    wanted.put(view, key);
    var image = kept.get(key);
    view.setImage(image);
    if (image == null) {
      background.execute(
          () -> {
            var read = reader.apply(frame, edge).map(FramePictures::image);
            ui.execute(() -> read.ifPresent(picture -> arrived(key, picture, view)));
          });
    }
  }

  /** Shows nothing in a view. */
  public void clear(ImageView view) {
    wanted.remove(view);
    view.setImage(null);
  }

  private void arrived(Key key, Image picture, ImageView view) {
    if (kept.put(key, picture) == null) {
      pixels += size(picture);
    }
    var oldest = kept.entrySet().iterator();
    while (pixels > KEPT_PIXELS && oldest.hasNext()) {
      pixels -= size(oldest.next().getValue());
      oldest.remove();
    }
    if (key.equals(wanted.get(view))) {
      view.setImage(picture);
    }
  }

  private static long size(Image picture) {
    return (long) (picture.getWidth() * picture.getHeight());
  }

  private static Image image(BufferedImage read) {
    var width = read.getWidth();
    var height = read.getHeight();
    var image = new WritableImage(width, height);
    image
        .getPixelWriter()
        .setPixels(
            0,
            0,
            width,
            height,
            PixelFormat.getIntArgbInstance(),
            read.getRGB(0, 0, width, height, null, 0, width),
            0,
            width);
    return image;
  }
}
