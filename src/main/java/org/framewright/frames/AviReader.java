package org.framewright.frames;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Text;

/**
 * AVI: chunks of RIFF, in the header's list of which bodies write when they filmed. (Layout:
 * Microsoft, "AVI RIFF File Reference"; the chunk IDIT as C's {@code ctime} or as Exif writes it,
 * common practice, no source.)
 */
final class AviReader {
  private static final int MOST_CHUNKS = 256;
  private static final int LONGEST = 64;
  private static final DateTimeFormatter CTIME =
      DateTimeFormatter.ofPattern("EEE MMM d HH:mm:ss uuuu", Locale.ENGLISH);

  private AviReader() {}

  static boolean claims(Bytes file) throws IOException {
    return file.holds(0, 12) && file.startsWith("RIFF") && file.ascii(8, 4).equals("AVI ");
  }

  static void read(Bytes file, Contents contents) throws IOException {
    // A longer film goes on in further chunks behind the first.
    long end = 0;
    int chunks = 0;
    while (file.holds(end, 8) && file.ascii(end, 4).equals("RIFF") && ++chunks < MOST_CHUNKS) {
      long next = end + 8 + file.u32(end + 4, false);
      if (next > file.size()) {
        contents.fault(
            Text.of("its film reaches to byte {0}, but it ends at byte {1}", next, file.size()));
      }
      end = next;
    }
    header(file, contents);
    TiffReader.noteIfHollow(file, contents);
  }

  private static void header(Bytes file, Contents contents) throws IOException {
    if (!file.holds(12, 12) || !file.ascii(20, 4).equals("hdrl")) {
      return;
    }
    var list = file.slice(24, Math.min(file.size() - 24, Math.max(0, file.u32(16, false) - 4)));
    long at = 0;
    for (int i = 0; i < MOST_CHUNKS && list.holds(at, 8); i++) {
      long size = list.u32(at + 4, false);
      if (list.ascii(at, 4).equals("IDIT") && list.holds(at + 8, size)) {
        var text = list.ascii(at + 8, (int) Math.min(LONGEST, size)).replace('\0', ' ').strip();
        contents.said(
            new Capture(time(text), Optional.empty(), Optional.empty(), OptionalInt.empty()));
        return;
      }
      at += 8 + size + size % 2;
    }
  }

  static Optional<LocalDateTime> time(String text) {
    try {
      return ExifReader.time(text)
          .or(() -> Optional.of(LocalDateTime.parse(text.replaceAll(" +", " "), CTIME)));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
