package org.framewright.frames;

import java.awt.Rectangle;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;

/**
 * How white the outermost pixels of a picture are, on all four sides, by the numbers that the file
 * has, whatever its profile makes of them. Only these are held, of a picture of whatever size.
 *
 * @param offWhite how many pixels are how far from white: at 0 those that are, at {@link #BLACK}
 *     those that are as far as black, and behind it those through which one sees
 */
public record PictureBorder(List<Integer> offWhite) {
  /** As far from white as black is, in the steps of 8 bits. */
  public static final int BLACK = 255;

  /** Of a pixel through which one sees what is behind the picture. */
  static final int TRANSPARENT = BLACK + 1;

  /** Decoders hold all coefficients of a progressive JPEG. */
  private static final long MOST_PROGRESSIVE = 32_000_000;

  /** Decoders hold a strip or a tile that is compressed. */
  private static final long MOST_IN_A_STRIP = 64L << 20;

  private static final int MOST_BYTES_A_PIXEL = 8;

  public PictureBorder {
    offWhite = List.copyOf(offWhite);
  }

  /** What became of reading it. */
  public sealed interface Reading {
    /** It is known. */
    record Read(PictureBorder border) implements Reading {}

    /**
     * It is not.
     *
     * @param why in words that fit behind the file's name
     */
    record NotRead(Text why) implements Reading {}
  }

  /** How many pixels it has. */
  public int pixels() {
    return offWhite.stream().mapToInt(Integer::intValue).sum();
  }

  /** How many of them are farther from white than that, or transparent. */
  public int fartherThan(int steps) {
    return offWhite.stream().skip(steps + 1L).mapToInt(Integer::intValue).sum();
  }

  /** How far from white the farthest is; {@link #BLACK} also where one is transparent. */
  public int farthest() {
    int steps = offWhite.size() - 1;
    while (steps > 0 && offWhite.get(steps) == 0) {
      steps--;
    }
    return Math.min(steps, BLACK);
  }

  /** Reads that of a JPEG, PNG or TIFF in RGB or grey. Links are not followed. */
  public static Reading of(Path path) {
    try (var file = Bytes.open(path)) {
      var format =
          JpegReader.claims(file)
              ? "jpeg"
              : PngReader.claims(file) ? "png" : TiffReader.claims(file) ? "tiff" : "";
      return format.isEmpty()
          ? new Reading.NotRead(Text.of("it is no JPEG, PNG or TIFF"))
          : of(file, format);
    } catch (Malformed e) {
      return new Reading.NotRead(e.said());
    } catch (IOException e) {
      return new Reading.NotRead(FileProblems.of(e).fault());
    }
  }

  private static Reading of(Bytes file, String format) throws IOException {
    if (format.equals("jpeg")
        && JpegReader.dimensions(file)
            .filter(
                size -> size.progressive() && area(size.width(), size.height()) > MOST_PROGRESSIVE)
            .isPresent()) {
      return tooLarge();
    }
    var reader = ImageIO.getImageReadersByFormatName(format).next();
    try (var input = new BytesInput(file.unmetered())) {
      reader.setInput(input, false, !format.equals("tiff"));
      return area(reader.getWidth(0), reader.getHeight(0)) > DecodablePicture.MOST_PIXELS
              || (format.equals("tiff") && isHeldInLargeParts(reader))
          ? tooLarge()
          : sides(reader);
    } catch (IOException | RuntimeException | OutOfMemoryError | StackOverflowError e) {
      // A file that was made to can have the decoder ask for more than there is.
      return new Reading.NotRead(Text.of("it cannot be decoded"));
    } finally {
      reader.dispose();
    }
  }

  private static long area(int width, int height) {
    return (long) width * height;
  }

  private static Reading tooLarge() {
    return new Reading.NotRead(Text.of("it is too large to be decoded"));
  }

  private static boolean isHeldInLargeParts(ImageReader reader) throws IOException {
    var compression =
        TIFFDirectory.createFromMetadata(reader.getImageMetadata(0))
            .getTIFFField(BaselineTIFFTagSet.TAG_COMPRESSION);
    return compression != null
        && compression.getAsInt(0) != BaselineTIFFTagSet.COMPRESSION_NONE
        && area(reader.getTileWidth(0), reader.getTileHeight(0)) * MOST_BYTES_A_PIXEL
            > MOST_IN_A_STRIP;
  }

  private static Reading sides(ImageReader reader) throws IOException {
    int width = reader.getWidth(0);
    int height = reader.getHeight(0);
    var sides =
        List.of(
            new Rectangle(0, 0, width, 1),
            new Rectangle(0, height - 1, width, height > 1 ? 1 : 0),
            new Rectangle(0, 1, 1, height - 2),
            new Rectangle(width - 1, 1, width > 1 ? 1 : 0, height - 2));
    int[] offWhite = new int[TRANSPARENT + 1];
    for (var side : sides) {
      if (!side.isEmpty()) {
        var how = reader.getDefaultReadParam();
        how.setSourceRegion(side);
        var why = count(reader.read(0, how), offWhite);
        if (why.isPresent()) {
          return new Reading.NotRead(why.get());
        }
      }
    }
    return new Reading.Read(new PictureBorder(Arrays.stream(offWhite).boxed().toList()));
  }

  private static Optional<Text> count(BufferedImage pixels, int[] offWhite) {
    var model = pixels.getColorModel();
    int space = model.getColorSpace().getType();
    if (space != ColorSpace.TYPE_RGB && space != ColorSpace.TYPE_GRAY) {
      return Optional.of(Text.of("its colours are neither RGB nor grey"));
    }
    boolean listed = model instanceof IndexColorModel;
    var raster = pixels.getRaster();
    for (int y = 0; y < pixels.getHeight(); y++) {
      for (int x = 0; x < pixels.getWidth(); x++) {
        int farthest = 0;
        if (listed) {
          int colour = pixels.getRGB(x, y);
          farthest = colour >>> 24 < BLACK ? TRANSPARENT : fromWhite(colour);
        } else {
          for (int band = 0; band < raster.getNumBands(); band++) {
            long most = (1L << model.getComponentSize(band)) - 1;
            long missing = most - raster.getSample(x, y, band);
            int steps = (int) ((missing * BLACK + most / 2) / most);
            boolean alpha = model.hasAlpha() && band >= model.getNumColorComponents();
            farthest = Math.max(farthest, alpha && steps > 0 ? TRANSPARENT : steps);
          }
        }
        offWhite[farthest]++;
      }
    }
    return Optional.empty();
  }

  private static int fromWhite(int colour) {
    int least = Math.min(colour >> 16 & BLACK, Math.min(colour >> 8 & BLACK, colour & BLACK));
    return BLACK - least;
  }
}
