package org.framewright.frames;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Text;

/**
 * X3F: sections, and at the end the directory of where they lie. One holds properties as pairs of
 * UTF-16 texts, others hold images; a JPEG among those carries Exif in newer bodies. (Layout: Sigma
 * and Foveon, "X3F Raw Image File Format", version 2.)
 */
final class X3fReader {
  private static final String MAGIC = "FOVb";
  private static final int IMAGE_HEADER = 28;
  private static final int PROPERTIES_HEADER = 24;
  private static final int JPEG = 18;
  private static final int MOST_SECTIONS = 256;
  private static final int MOST_PROPERTIES = 1024;
  private static final int LONGEST = 128;

  private X3fReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.startsWith(MAGIC);
  }

  static void read(Bytes file, Contents contents) throws IOException {
    turn(file, contents);
    long directory = file.u32(file.size() - 4, false);
    if (!file.holds(directory, 12) || !file.ascii(directory, 4).equals("SECd")) {
      throw new Malformed(Text.of("its end, which says where its parts lie, is missing"));
    }
    long count = file.u32(directory + 8, false);
    if (count > MOST_SECTIONS) {
      throw new Malformed(Text.of("it claims {0} parts", count));
    }
    boolean image = false;
    for (long i = 0; i < count; i++) {
      long entry = directory + 12 + 12 * i;
      var section = file.slice(file.u32(entry, false), file.u32(entry + 4, false));
      switch (file.ascii(entry + 8, 4)) {
        case "PROP" -> contents.said(properties(section));
        case "IMAG", "IMA2" -> {
          image = true;
          image(section, contents);
        }
        default -> {}
      }
    }
    if (!image) {
      contents.fault(Text.of("it names no picture data"));
    }
  }

  /** By how many degrees it must be turned stands in the file's header since version 2.0. */
  private static void turn(Bytes file, Contents contents) throws IOException {
    if (file.u16(6, false) >= 2 && file.u16(6, false) < 4) {
      contents.orientation(CiffReader.orientation((int) file.u32(36, false)));
    }
  }

  private static void image(Bytes section, Contents contents) throws IOException {
    if (!section.startsWith("SECi") || section.u32(12, false) != JPEG) {
      return;
    }
    var jpeg = section.slice(IMAGE_HEADER, section.size() - IMAGE_HEADER);
    contents.preview(Preview.jpeg(jpeg));
    JpegReader.exifOf(jpeg, contents);
  }

  private static Capture properties(Bytes section) throws IOException {
    if (!section.startsWith("SECp")) {
      return Capture.UNKNOWN;
    }
    long count = Math.min(MOST_PROPERTIES, section.u32(8, false));
    long texts = PROPERTIES_HEADER + 8 * section.u32(8, false);
    var values = new HashMap<String, String>();
    for (long i = 0; i < count; i++) {
      long entry = PROPERTIES_HEADER + 8 * i;
      values.put(
          text(section, texts + 2 * section.u32(entry, false)),
          text(section, texts + 2 * section.u32(entry + 4, false)));
    }
    return capture(values);
  }

  private static Capture capture(Map<String, String> values) {
    var make = values.getOrDefault("CAMMANUF", "");
    var model = values.getOrDefault("CAMMODEL", "");
    var serial = values.getOrDefault("CAMSERIAL", "");
    var time = values.getOrDefault("TIME", "");
    boolean seconds = !time.isEmpty() && time.length() < 11 && time.chars().allMatch(X3fReader::is);
    return new Capture(
        seconds ? CiffReader.time(Long.parseLong(time)) : Optional.empty(),
        Optional.empty(),
        (make + model + serial).isEmpty()
            ? Optional.empty()
            : Optional.of(new Camera(make, model, serial)),
        OptionalInt.empty());
  }

  private static boolean is(int digit) {
    return digit >= '0' && digit <= '9';
  }

  /** A text that ends with a zero, or where there is no more of it. */
  private static String text(Bytes section, long at) throws IOException {
    var text = new StringBuilder();
    for (long i = at; section.holds(i, 2) && text.length() < LONGEST; i += 2) {
      int unit = section.u16(i, false);
      if (unit == 0) {
        break;
      }
      text.append((char) unit);
    }
    return text.toString().strip();
  }
}
