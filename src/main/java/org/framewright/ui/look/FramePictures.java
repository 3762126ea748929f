package org.framewright.ui.look;

import java.awt.image.BufferedImage;
import java.util.Map;
import java.util.Optional;
import java.util.WeakHashMap;
import java.util.concurrent.Executor;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import org.framewright.frames.Frame;

/**
 * The pictures of frames on the interface: read in the background, the latest asked for shown, a
 * bounded number of pixels kept. Called on the interface thread.
 */
public final class FramePictures {
  /** A pixel costs up to eight bytes: the picture's, and the toolkit's own copy of it. */
  private static final long KEPT_PIXELS = 3_000_000;

  /** A frame at a size. A frame that got another name may have got a readable file with it. */
  private record Key(Frame frame, int edge) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Key(var otherFrame, var otherEdge)
          && edge == otherEdge
          && frame.id().equals(otherFrame.id())
          && frame.primary().path().equals(otherFrame.primary().path());
    }

    @Override
    public int hashCode() {
      return 31 * frame.id().hashCode() + edge;
    }
  }

  private record Request(Key key, Consumer<Optional<Image>> then) {}

  private final PictureLoader<Key, Image> loader;
  private final Map<ImageView, Request> requests = new WeakHashMap<>();

  /**
   * Pictures by {@code reader}, which is asked for a frame and a longest edge in pixels, on the
   * background executor.
   */
  public FramePictures(
      Executor background,
      Executor ui,
      BiFunction<Frame, Integer, Optional<BufferedImage>> reader) {
    this.loader =
        new PictureLoader<>(
            background,
            ui,
            key -> reader.apply(key.frame(), key.edge()).map(FramePictures::image),
            FramePictures::size,
            KEPT_PIXELS);
  }

  /** Shows a frame in a view, now if it is kept, else as soon as it was read. */
  public void show(Frame frame, int edge, ImageView view) {
    show(frame, edge, view, () -> {});
  }

  /**
   * The same.
   *
   * @param none runs once it is known that the frame has no picture
   */
  public void show(Frame frame, int edge, ImageView view, Runnable none) {
    var key = new Key(frame, edge);
    var before = requests.get(view);
    if (before != null && before.key().equals(key)) {
      return;
    }
    clear(view);
    Consumer<Optional<Image>> then =
        picture -> {
          var now = requests.get(view);
          if (now != null && now.key().equals(key)) {
            set(view, picture, none);
          }
        };
    requests.put(view, new Request(key, then));
    loader.want(key, then).ifPresent(picture -> set(view, picture, none));
  }

  private static void set(ImageView view, Optional<Image> picture, Runnable none) {
    view.setImage(picture.orElse(null));
    if (picture.isEmpty()) {
      none.run();
    }
  }

  /** Shows nothing in a view. */
  public void clear(ImageView view) {
    var before = requests.remove(view);
    if (before != null) {
      loader.drop(before.key(), before.then());
    }
    view.setImage(null);
  }

  /** Lets go of all pictures; what was asked for and is not read yet never is. */
  public void close() {
    requests.clear();
    loader.clear();
  }

  private static long size(Image picture) {
    return (long) (picture.getWidth() * picture.getHeight());
  }

  /** A picture that was read, for the interface. From any thread. */
  public static Image image(BufferedImage read) {
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
