package org.framewright.frames;

import java.io.IOException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Optional;
import org.framewright.base.Sha256;
import org.framewright.base.Text;

/**
 * Tells whether two files hold one picture with different descriptions: a digest over what makes
 * the picture, and not over Exif, XMP, previews and notes. It proves no copy, since what it leaves
 * out may be what nobody can bring back.
 *
 * <p>There is none wherever a structure is not fully understood, and none over next to nothing,
 * which would equal any other such digest: the data have to have a byte for 64 pixels at the least.
 * Orientation is a description.
 *
 * @param value what is digested and how, and the digest in hexadecimal digits
 */
public record PictureDigest(String value) {
  /** With less data than a byte for so many pixels a file is a shell. */
  private static final int MOST_PIXELS_A_BYTE = 64;

  private static final int PIECE = 1 << 20;

  /** The digest of a file; none where it is no picture of a kind that is known well enough. */
  public static Optional<PictureDigest> of(Path path) {
    try (var file = Bytes.open(path)) {
      return of(file, MOST_PIXELS_A_BYTE);
    } catch (IOException | RuntimeException | StackOverflowError e) {
      // Not understood, so nothing is claimed. The readers are bounded.
      return Optional.empty();
    }
  }

  /** The same with another floor; 0 for none. */
  static Optional<PictureDigest> of(Bytes file, int mostPixelsAByte) throws IOException {
    var into = new Into(file.unmetered());
    Optional<String> kind =
        JpegReader.claims(file)
            ? JpegPicture.digest(file, into)
            : TiffReader.claims(file)
                ? TiffPicture.digest(file, into)
                : IsoReader.claims(file) ? IsoPicture.digest(file, into) : Optional.empty();
    boolean enough =
        into.data > 0
            && into.pixels > 0
            && (mostPixelsAByte == 0 || into.data >= into.pixels / mostPixelsAByte);
    return kind.filter(_ -> enough).map(name -> new PictureDigest(name + "-1:" + into.hex()));
  }

  /** What of a file goes into its digest. */
  static final class Into {
    private final Bytes file;
    private final MessageDigest digest;
    private long data;
    private long pixels;

    private Into(Bytes file) {
      this.file = file;
      this.digest = Sha256.digest();
    }

    /** A number, whatever its meaning. */
    void number(long value) {
      for (int shift = 56; shift >= 0; shift -= 8) {
        digest.update((byte) (value >> shift));
      }
    }

    /** A stretch of the file with its length. */
    void part(long from, long length) throws IOException {
      if (!file.holds(from, length)) {
        throw new Malformed(Text.of("a part lies outside"));
      }
      number(length);
      for (long at = 0; at < length; at += PIECE) {
        file.digest(from + at, (int) Math.min(PIECE, length - at), digest);
      }
    }

    /** A stretch of it that holds picture data. */
    void data(long from, long length) throws IOException {
      part(from, length);
      data += length;
    }

    /** Bytes of a part of the file. */
    void bytes(byte[] bytes) {
      number(bytes.length);
      digest.update(bytes);
    }

    /** How large the picture is, of several the largest. */
    void pixels(long width, long height) {
      if (width > 0 && height > 0 && width < 1 << 20 && height < 1 << 20) {
        pixels = Math.max(pixels, width * height);
      }
    }

    private String hex() {
      return Sha256.hex(digest);
    }
  }
}
