package org.framewright.frames;

import java.io.IOException;
import org.framewright.base.Text;

/** WebP (RFC 9649): chunks of RIFF, of which one at least holds a picture. */
final class WebpReader {
  private static final int HEAD = 12;

  private WebpReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.holds(0, HEAD) && file.startsWith("RIFF") && file.ascii(8, 4).equals("WEBP");
  }

  static void read(Bytes file) throws IOException {
    var all = file.slice(0, 8 + file.u32(4, false));
    boolean picture = false;
    long at = HEAD;
    while (at < all.size()) {
      long length = all.u32(at + 4, false);
      all.slice(at + 8, length);
      picture |=
          switch (all.ascii(at, 4)) {
            case "VP8 ", "VP8L", "ANMF" -> length > 0;
            default -> false;
          };
      at += 8 + length + length % 2;
    }
    if (!picture) {
      throw new Malformed(Text.of("it names no picture data"));
    }
  }
}
