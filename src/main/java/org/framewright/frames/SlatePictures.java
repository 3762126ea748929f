package org.framewright.frames;

import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;
import org.framewright.frames.slate.GreyPicture;

/**
 * The picture of a frame in which a slate is looked for, in grey: of all pictures in all its files
 * the smallest that is large enough, so that a preview in the raw comes before a large JPEG beside
 * it; where none is, the largest. A JPEG that nothing smaller stands for is decoded itself, with
 * rows and columns left out. Nothing of more than {@link DecodablePicture#MOST_PIXELS} pixels is
 * decoded. How it is turned does not matter to a slate.
 *
 * <p>Reuses its memory: for one thread, and a picture lasts until the next is asked for.
 */
final class SlatePictures {
  /** Measured: from here on a slate on 5 percent of the long side is read. */
  private static final int ENOUGH = 1000;

  /** Less is left out of one that is larger than this, so that it keeps half of it at least. */
  private static final int LARGEST = 2400;

  /** As on thumbnails of Exif, which have 160: no slate that anybody shoots is legible there. */
  private static final int LEAST = 320;

  /** One for each file that is open. */
  private final List<Bytes.Room> rooms = new ArrayList<>();

  private byte[] values = {};

  /** What there is to look at. */
  sealed interface Chosen {
    /** A picture. */
    record Picture(GreyPicture grey) implements Chosen {}

    /** Nothing, and why. */
    record Nothing(Text why) implements Chosen {}
  }

  Chosen of(Frame frame) {
    if (frame.isClip()) {
      return new Chosen.Nothing(Text.of("it is a clip"));
    }
    try (var open = new OpenFiles()) {
      var pictures = new ArrayList<DecodablePicture>();
      var faults = new ArrayList<Text>();
      for (var file : frame.files()) {
        if (file.role().isPicture()) {
          try {
            pictures(open.open(file.path())).stream()
                .filter(DecodablePicture::isBearable)
                .forEach(pictures::add);
          } catch (IOException e) {
            faults.add(FileProblems.of(e).fault());
          } catch (RuntimeException | StackOverflowError e) {
            // The readers are bounded, so this is a fault of one of them.
            faults.add(Text.of("its structure cannot be understood"));
          }
        }
      }
      return choose(pictures, faults);
    }
  }

  /** The files of a frame: they stay open until one of their pictures is decoded. */
  private final class OpenFiles implements AutoCloseable {
    private final List<Bytes> files = new ArrayList<>();

    Bytes open(Path path) throws IOException {
      if (rooms.size() == files.size()) {
        rooms.add(new Bytes.Room());
      }
      var file = Bytes.open(path, rooms.get(files.size()));
      files.add(file);
      return file;
    }

    @Override
    public void close() {
      for (var file : files) {
        try {
          file.close();
        } catch (IOException e) {
          // It was only read.
        }
      }
    }
  }

  private Chosen choose(List<DecodablePicture> candidates, List<Text> faults) {
    if (candidates.isEmpty()) {
      return new Chosen.Nothing(
          faults.isEmpty() ? Text.of("no picture in its files can be decoded") : faults.getFirst());
    }
    var large = candidates.stream().filter(one -> one.edge() >= LEAST).toList();
    if (large.isEmpty()) {
      int edge = candidates.stream().mapToInt(DecodablePicture::edge).max().orElse(0);
      return new Chosen.Nothing(
          Text.of(
              "the largest picture in its files that can be decoded has {0} pixels, too few for a"
                  + " slate",
              edge));
    }
    for (var one : DecodablePicture.inOrder(large, ENOUGH)) {
      var grey = decode(one);
      if (grey.isPresent()) {
        return new Chosen.Picture(grey.get());
      }
    }
    return new Chosen.Nothing(Text.of("no picture in its files can be decoded"));
  }

  private static List<DecodablePicture> pictures(Bytes file) throws IOException {
    var pictures = DecodablePicture.inside(Contents.of(file));
    if (JpegReader.claims(file)) {
      DecodablePicture.of(Preview.jpeg(file)).ifPresent(pictures::add);
    }
    return pictures;
  }

  private Optional<GreyPicture> decode(DecodablePicture picture) {
    try {
      int leaveOut = (picture.edge() + LARGEST - 1) / LARGEST;
      return picture.raster(leaveOut).map(this::grey);
    } catch (IOException | RuntimeException | StackOverflowError e) {
      return Optional.empty();
    }
  }

  /** The first band: of a JPEG the luminance, else red, in which black on white is the same. */
  private GreyPicture grey(Raster raster) {
    int width = raster.getWidth();
    int height = raster.getHeight();
    if (values.length < width * height) {
      values = new byte[width * height];
    }
    var row = new int[width];
    for (int y = 0; y < height; y++) {
      raster.getSamples(raster.getMinX(), raster.getMinY() + y, width, 1, 0, row);
      for (int x = 0; x < width; x++) {
        values[y * width + x] = (byte) row[x];
      }
    }
    return new GreyPicture(values, width, height);
  }
}
