package org.framewright.frames;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;

/**
 * What a picture's file says of the picture, without its pixels.
 *
 * @param layers how many it is made of; none where it is flat
 * @param pages how many pictures follow each other in the file; reduced ones do not count
 * @param profile the ICC profile inside
 * @param bytes of the file
 */
public record PictureHeader(
    Kind kind,
    Size size,
    Colour colour,
    int layers,
    int pages,
    Optional<Profile> profile,
    Optional<Resolution> resolution,
    long bytes) {

  /** The kind of a file, by its first bytes. */
  public enum Kind {
    JPEG,
    PNG,
    TIFF,
    /** The form of TIFF for 4 GB and more. */
    BIGTIFF,
    PSD,
    /** The form of PSD for large pictures. */
    PSB,
    WEBP,
    HEIF,
    AVIF;

    /** In small letters. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** How colours are made of the channels. */
  public enum Model {
    RGB,
    GREY,
    CMYK,
    LAB,
    INDEXED,
    OTHER;

    /** In small letters. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    int channels() {
      return switch (this) {
        case RGB, LAB -> 3;
        case CMYK -> 4;
        case GREY, INDEXED -> 1;
        case OTHER -> 0;
      };
    }
  }

  /**
   * Its size in pixels.
   *
   * @param width as it is stored
   * @param height as it is stored
   * @param turned whether it is shown on its side, so that its width is seen as its height
   */
  public record Size(int width, int height, boolean turned) {
    /** As it is seen. */
    public int seenWidth() {
      return turned ? height : width;
    }

    /** As it is seen. */
    public int seenHeight() {
      return turned ? width : height;
    }
  }

  /**
   * Its channels.
   *
   * @param bits of one channel
   * @param extra channels besides those of the colours: transparency, masks, spot colours
   */
  public record Colour(Model model, int bits, int extra) {
    /** All of them. */
    public int channels() {
      return model.channels() + extra;
    }
  }

  /**
   * A colour profile.
   *
   * @param description its name, such as {@code sRGB IEC61966-2.1}; empty where it says none
   * @param embedded whether it is in the file; a PNG may say that it is sRGB without it
   */
  public record Profile(String description, boolean embedded) {}

  /** Pixels per inch, to be printed by. */
  public record Resolution(double across, double down) {}

  /** What became of reading a header. */
  public sealed interface Reading {
    /** It is known. */
    record Read(PictureHeader header) implements Reading {}

    /**
     * It is not.
     *
     * @param why in words that fit behind the file's name
     */
    record NotRead(Text why) implements Reading {}
  }

  /**
   * Reads the header of a JPEG, PNG, TIFF, BigTIFF, PSD, PSB, WebP, HEIF or AVIF, whatever its
   * ending says; those of raws are not read. Links are not followed.
   */
  public static Reading of(Path path) {
    try (var file = Bytes.open(path)) {
      return FileRole.of(path).filter(role -> role == FileRole.RAW).isPresent() ? raw() : of(file);
    } catch (Malformed e) {
      return new Reading.NotRead(e.said());
    } catch (IOException e) {
      return new Reading.NotRead(FileProblems.of(e).fault());
    } catch (RuntimeException | StackOverflowError e) {
      // The readers are bounded, so this is a fault of one of them.
      return new Reading.NotRead(Text.of("its structure cannot be understood"));
    }
  }

  static Reading of(Bytes file) throws IOException {
    Optional<PictureHeader> header;
    if (PsdReader.claims(file)) {
      header = Optional.of(PsdHeader.read(file));
    } else if (JpegReader.claims(file)) {
      header = Optional.of(new JpegHeader(file).read());
    } else if (PngReader.claims(file)) {
      header = Optional.of(new PngHeader(file).read());
    } else if (WebpReader.claims(file)) {
      header = Optional.of(WebpHeader.read(file));
    } else if (TiffReader.claims(file) || BigTiffReader.claims(file)) {
      header = TiffHeader.read(file);
    } else if (HeifHeader.claims(file)) {
      header = Optional.of(new HeifHeader(file).read());
    } else {
      return new Reading.NotRead(
          Text.of("its first bytes are those of no picture that is known here"));
    }
    return header.<Reading>map(Reading.Read::new).orElseGet(PictureHeader::raw);
  }

  private static Reading raw() {
    return new Reading.NotRead(Text.of("it is a raw, of which the header is not read"));
  }

  /** Its size, where it is one. */
  static Size size(long width, long height, boolean turned) throws Malformed {
    if (width < 1 || height < 1 || width > Integer.MAX_VALUE || height > Integer.MAX_VALUE) {
      throw new Malformed(Text.of("its header describes no picture"));
    }
    return new Size((int) width, (int) height, turned);
  }
}
