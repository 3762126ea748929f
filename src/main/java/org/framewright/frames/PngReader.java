package org.framewright.frames;

import java.io.IOException;

/** PNG (W3C): chunks of length, type, data and checksum; the last is IEND; eXIf holds Exif. */
final class PngReader {
  private static final String MAGIC = "\u0089PNG\r\n\u001a\n";

  private PngReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.startsWith(MAGIC);
  }

  static void read(Bytes file, Contents contents) throws IOException {
    long at = MAGIC.length();
    while (true) {
      long length = file.u32(at, true);
      var type = file.ascii(at + 4, 4);
      var data = file.slice(at + 8, length);
      file.slice(at + 8 + length, 4);
      switch (type) {
        case "IEND" -> {
          return;
        }
        case "eXIf" -> contents.exif(data);
        default -> {}
      }
      at += 12 + length;
    }
  }
}
