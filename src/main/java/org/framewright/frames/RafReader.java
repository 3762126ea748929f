package org.framewright.frames;

import java.io.IOException;
import org.framewright.base.Text;

/**
 * RAF: a header of big-endian offsets and lengths, at byte 84 those of a JPEG with the Exif, at 92
 * those of the sensor's header, at 100 those of its data. (Layout as published by open-source
 * readers; the maker publishes none.)
 */
final class RafReader {
  private static final String MAGIC = "FUJIFILMCCD-RAW ";

  private RafReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.startsWith(MAGIC);
  }

  static void read(Bytes file, Contents contents) throws IOException {
    var jpeg = part(file, 84);
    var head = new Contents();
    try {
      JpegReader.readHead(jpeg, head);
    } catch (Malformed e) {
      contents.fault(Text.of("its preview is broken: {0}", e.said()));
    }
    head.exif().forEach(contents::exif);
    head.previews().forEach(contents::preview);
    head.xmp().ifPresent(contents::xmp);
    contents.preview(Preview.jpeg(jpeg));
    part(file, 92);
    part(file, 100);
    TiffReader.noteIfHollow(file, contents);
  }

  private static Bytes part(Bytes file, long at) throws IOException {
    return file.slice(file.u32(at, true), file.u32(at + 4, true));
  }
}
