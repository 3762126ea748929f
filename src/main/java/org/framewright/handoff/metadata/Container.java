package org.framewright.handoff.metadata;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.Text;

/** A picture's file in which a packet may lie. */
sealed interface Container permits JpegContainer, TiffContainer {
  /** The packet that lies in it. */
  Optional<byte[]> packet();

  /** The older IIM data that lie in it. */
  Optional<byte[]> iim();

  /**
   * How a packet comes into it in place of the one that it has.
   *
   * @param file its file
   * @throws NotUsable where that is not to be done
   */
  Rewriting with(Packet packet, Path file) throws IOException, NotUsable;

  /**
   * Reads a JPEG or a TIFF, by its first bytes.
   *
   * @throws NotUsable where it is neither, or not understood
   */
  static Container of(Path file) throws IOException, NotUsable {
    try (var bytes = Stretch.of(file)) {
      int first = bytes.u16(0, true);
      return switch (first) {
        case 0xFFD8 -> JpegContainer.of(bytes);
        case 0x4949, 0x4D4D -> TiffContainer.of(bytes, first == 0x4D4D);
        default -> throw new NotUsable(Text.of("it is neither a JPEG nor a TIFF"));
      };
    }
  }
}
