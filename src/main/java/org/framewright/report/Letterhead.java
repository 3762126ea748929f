package org.framewright.report;

import java.awt.Color;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;
import org.framewright.handoff.metadata.Studio;
import org.framewright.handoff.metadata.Studio.Detail;

/**
 * Who sends a report: it stands at the top of the first page.
 *
 * @param studio a name; empty where nobody said one
 * @param contact how to reach it, a line; may be empty
 * @param logo a picture of it
 */
public record Letterhead(String studio, String contact, Optional<Logo> logo) {
  /** Nobody is named. */
  public static final Letterhead NONE = new Letterhead("", "", Optional.empty());

  private static final int LARGEST_FILE = 16 << 20;
  private static final long MOST_PIXELS = 40_000_000;
  private static final int MOST_HIGH = 320;
  private static final int MOST_WIDE = 1200;

  /**
   * A logo as a PNG without transparency.
   *
   * @param width in pixels
   * @param height in pixels
   */
  public record Logo(Png png, int width, int height) {}

  /** The bytes of a PNG. */
  public static final class Png {
    private final byte[] bytes;

    private Png(byte[] bytes) {
      this.bytes = bytes;
    }

    byte[] bytes() {
      return bytes.clone();
    }
  }

  /** What came of reading what the settings say. */
  public sealed interface Reading {
    /** It can stand on a page. */
    record Sound(Letterhead letterhead) implements Reading {}

    /** The logo cannot be printed. */
    record Faulty(Problem problem) implements Reading {}
  }

  /** Of what the settings say of the studio; its logo is read from the disk. */
  public static Reading of(Studio.Reading read) {
    return switch (read) {
      case Studio.Reading.Faulty(var problem) -> new Reading.Faulty(toCorrect(problem));
      case Studio.Reading.Sound(var studio) -> of(studio);
    };
  }

  /** Of what a studio says of itself; its logo is read from the disk. */
  public static Reading of(Studio studio) {
    var name = studio.get(Detail.STUDIO).or(() -> studio.get(Detail.PHOTOGRAPHER)).orElse("");
    var contact =
        Stream.of(Detail.MAIL, Detail.PHONE, Detail.WEBSITE)
            .flatMap(detail -> studio.get(detail).stream())
            .collect(Collectors.joining(" \u00b7 "));
    var path = studio.get(Detail.LOGO);
    if (path.isEmpty()) {
      return new Reading.Sound(new Letterhead(name, contact, Optional.empty()));
    }
    return switch (readLogo(Path.of(path.get()))) {
      case LogoReading.Sound sound ->
          new Reading.Sound(new Letterhead(name, contact, Optional.of(sound.logo())));
      case LogoReading.Faulty faulty -> new Reading.Faulty(faulty.problem());
    };
  }

  /** What came of reading a logo. */
  public sealed interface LogoReading {
    /** It can be printed. */
    record Sound(Logo logo) implements LogoReading {}

    /** It cannot. */
    record Faulty(Problem problem) implements LogoReading {}
  }

  /** What is wrong in the settings, with where it is put right. */
  private static Problem toCorrect(Problem ofSettings) {
    return new Problem(
        ofSettings.fault(), ofSettings.where(), Text.of("Correct it on the page of settings."));
  }

  /** Reads a logo from a PNG or JPEG; what is larger than print needs is made smaller. */
  public static LogoReading readLogo(Path file) {
    try {
      var image = decode(SmallFiles.read(file, LARGEST_FILE));
      if (image.isEmpty()) {
        return new LogoReading.Faulty(
            new Problem(
                "the logo of the settings is no picture that can be printed",
                file.toString(),
                "Save it as a PNG or JPEG of up to 40 million pixels, or leave it out of the"
                    + " settings."));
      }
      var print = forPrint(image.get());
      var png = new ByteArrayOutputStream();
      ImageIO.write(print, "png", png);
      return new LogoReading.Sound(
          new Logo(new Png(png.toByteArray()), print.getWidth(), print.getHeight()));
    } catch (IOException e) {
      var why = FileProblems.of(e);
      return new LogoReading.Faulty(
          new Problem(
              Text.of("the logo of the settings cannot be read: {0}", why.fault()),
              file.toString(),
              "Choose it again on the page of settings, or leave it out there."));
    }
  }

  private static Optional<BufferedImage> decode(byte[] bytes) throws IOException {
    try (var input = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
      var readers = ImageIO.getImageReaders(input);
      if (!readers.hasNext()) {
        return Optional.empty();
      }
      var reader = readers.next();
      try {
        reader.setInput(input, true, true);
        if ((long) reader.getWidth(0) * reader.getHeight(0) > MOST_PIXELS) {
          return Optional.empty();
        }
        return Optional.of(reader.read(0));
      } catch (IOException | RuntimeException e) {
        return Optional.empty();
      } finally {
        reader.dispose();
      }
    }
  }

  /** On white paper, halved until it is small enough, so that fine lines stay. */
  private static BufferedImage forPrint(BufferedImage image) {
    double scale =
        Math.min(
            1,
            Math.min(
                (double) MOST_HIGH / image.getHeight(), (double) MOST_WIDE / image.getWidth()));
    var now = onWhite(image, image.getWidth(), image.getHeight());
    int width = Math.max(1, (int) Math.round(image.getWidth() * scale));
    int height = Math.max(1, (int) Math.round(image.getHeight() * scale));
    while (now.getWidth() > 2 * width) {
      now = onWhite(now, now.getWidth() / 2, Math.max(1, now.getHeight() / 2));
    }
    return onWhite(now, width, height);
  }

  private static BufferedImage onWhite(BufferedImage image, int width, int height) {
    var drawn = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    var pen = drawn.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    pen.drawImage(image, 0, 0, width, height, Color.WHITE, null);
    pen.dispose();
    return drawn;
  }
}
