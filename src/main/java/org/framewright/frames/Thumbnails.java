package org.framewright.frames;

import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * The small previews that frames carry in their files, turned upright by Exif Orientation. Raws,
 * HEIF and CR3 give the smallest of their embedded JPEGs that is large enough; where none is, the
 * largest. A JPEG without a thumbnail that is large enough gives itself, if it is no larger than
 * {@link #LARGEST_WHOLE}. Nothing of more than {@link #MOST_PIXELS} is decoded, and nothing at full
 * size: rows and columns are left out while decoding.
 *
 * <p>Safe for use by several threads; decoding takes milliseconds, so keep it off an interface's
 * thread, and keep what is shown.
 */
public final class Thumbnails {
  private static final long LARGEST_WHOLE = 8L << 20;

  /** Previews of one file that are tried until one can be decoded. */
  private static final int MOST_TRIED = 4;

  private static final long MOST_PIXELS = 120_000_000;

  /** A progressive JPEG is held whole, in coefficients, while it is decoded. */
  private static final long MOST_PROGRESSIVE = 16_000_000;

  private Thumbnails() {}

  /**
   * The preview of a frame, at most {@code maxEdge} pixels wide and high; none if none of its files
   * has one that can be decoded.
   */
  public static Optional<BufferedImage> of(Frame frame, int maxEdge) {
    // The JPEG beside a raw is the cheaper one to open, and shows the same.
    return frame.files().stream()
        .filter(file -> file.role().isPicture())
        .sorted(Comparator.comparingInt(file -> file.role() == FileRole.JPEG ? 0 : 1))
        .flatMap(file -> of(file.path(), maxEdge).stream())
        .findFirst();
  }

  /** The preview of one file, as for a frame; none also where the file cannot be read. */
  public static Optional<BufferedImage> of(Path file, int maxEdge) {
    if (maxEdge < 1) {
      throw new IllegalArgumentException("a picture of at most " + maxEdge + " pixels");
    }
    try {
      return decode(file, maxEdge);
    } catch (IOException | RuntimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<BufferedImage> decode(Path path, int maxEdge) throws IOException {
    try (var file = Bytes.open(path)) {
      var contents = Contents.of(file);
      var candidates = new ArrayList<Candidate>();
      for (var preview : contents.previews()) {
        Candidate.of(preview).ifPresent(candidates::add);
      }
      if (JpegReader.claims(file) && file.size() <= LARGEST_WHOLE) {
        Candidate.of(Preview.jpeg(file)).ifPresent(candidates::add);
      }
      for (var candidate : inOrder(candidates, maxEdge)) {
        var image = candidate.decode(maxEdge);
        if (image.isPresent()) {
          return image.map(found -> upright(fit(found, maxEdge), contents.orientation()));
        }
      }
      return Optional.empty();
    }
  }

  /** First the smallest that is large enough, upward; then the others, largest first. */
  private static List<Candidate> inOrder(List<Candidate> candidates, int maxEdge) {
    return candidates.stream()
        .filter(Candidate::isBearable)
        .sorted(
            Comparator.comparing((Candidate candidate) -> candidate.edge() < maxEdge)
                .thenComparingInt(
                    candidate -> candidate.edge() < maxEdge ? -candidate.edge() : candidate.edge()))
        .limit(MOST_TRIED)
        .toList();
  }

  private record Candidate(Preview preview, int width, int height, boolean progressive) {
    static Optional<Candidate> of(Preview preview) throws IOException {
      if (preview.rgb()) {
        return Optional.of(new Candidate(preview, preview.width(), preview.height(), false));
      }
      return JpegReader.dimensions(preview.data())
          .map(size -> new Candidate(preview, size.width(), size.height(), size.progressive()));
    }

    boolean isBearable() {
      return (long) width * height <= (progressive ? MOST_PROGRESSIVE : MOST_PIXELS);
    }

    int edge() {
      return Math.max(width, height);
    }

    Optional<BufferedImage> decode(int maxEdge) throws IOException {
      if (preview.data().size() > Bytes.MOST_AT_ONCE) {
        return Optional.empty();
      }
      byte[] data = preview.data().read(0, (int) preview.data().size());
      return preview.rgb() ? Optional.of(rows(data)) : jpeg(data, Math.max(1, edge() / maxEdge));
    }

    private BufferedImage rows(byte[] data) {
      var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
      for (int y = 0, at = 0; y < height; y++) {
        for (int x = 0; x < width; x++, at += 3) {
          image.setRGB(
              x,
              y,
              ((data[at] & 0xFF) << 16) | ((data[at + 1] & 0xFF) << 8) | (data[at + 2] & 0xFF));
        }
      }
      return image;
    }

    private static Optional<BufferedImage> jpeg(byte[] data, int leaveOut) {
      var reader = ImageIO.getImageReadersByFormatName("jpeg").next();
      try (var input = new MemoryCacheImageInputStream(new ByteArrayInputStream(data))) {
        reader.setInput(input, true, true);
        var how = reader.getDefaultReadParam();
        how.setSourceSubsampling(leaveOut, leaveOut, 0, 0);
        return Optional.of(reader.read(0, how));
      } catch (IOException | RuntimeException e) {
        // The decoder refuses it: one preview less.
        return Optional.empty();
      } finally {
        reader.dispose();
      }
    }
  }

  private static BufferedImage fit(BufferedImage image, int maxEdge) {
    int edge = Math.max(image.getWidth(), image.getHeight());
    double scale = Math.min(1, (double) maxEdge / edge);
    int width = Math.max(1, (int) Math.round(image.getWidth() * scale));
    int height = Math.max(1, (int) Math.round(image.getHeight() * scale));
    return draw(image, width, height, AffineTransform.getScaleInstance(scale, scale));
  }

  /** Exif Orientation (CIPA DC-008): where the picture's top left corner lies as it is seen. */
  private static BufferedImage upright(BufferedImage image, int orientation) {
    double w = image.getWidth();
    double h = image.getHeight();
    var turn =
        switch (orientation) {
          case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
          case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
          case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
          case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
          case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
          case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
          case 8 -> new AffineTransform(0, -1, 1, 0, 0, w);
          default -> null;
        };
    if (turn == null) {
      return image;
    }
    boolean lies = orientation >= 5;
    return draw(
        image,
        lies ? image.getHeight() : image.getWidth(),
        lies ? image.getWidth() : image.getHeight(),
        turn);
  }

  private static BufferedImage draw(
      BufferedImage image, int width, int height, AffineTransform how) {
    var drawn = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    var g = drawn.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.drawImage(image, how, null);
    g.dispose();
    return drawn;
  }
}
