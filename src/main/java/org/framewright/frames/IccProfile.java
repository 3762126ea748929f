package org.framewright.frames;

import java.io.IOException;
import java.nio.charset.StandardCharsets;

/**
 * The name of an ICC profile, by ICC.1:2001-04 (version 2, type {@code desc}) and ICC.1:2022
 * (version 4, type {@code mluc}): after a head of 128 bytes lies a table of tags, of which {@code
 * desc} holds it.
 */
final class IccProfile {
  /** Real ones have up to 3 MB. */
  static final int MOST = 4 << 20;

  private static final int TABLE = 128;
  private static final int MOST_TAGS = 256;
  private static final int LONGEST = 256;
  private static final int MOST_LANGUAGES = 64;

  private IccProfile() {}

  /** A profile that is embedded; without a name where it cannot be understood. */
  static PictureHeader.Profile of(Bytes profile) throws IOException {
    try {
      return new PictureHeader.Profile(description(profile), true);
    } catch (Malformed e) {
      return new PictureHeader.Profile("", true);
    }
  }

  private static String description(Bytes profile) throws IOException {
    if (!profile.ascii(36, 4).equals("acsp")) {
      return "";
    }
    long tags = Math.min(MOST_TAGS, profile.u32(TABLE, true));
    for (long at = TABLE + 4; at < TABLE + 4 + tags * 12; at += 12) {
      if (profile.ascii(at, 4).equals("desc")) {
        var tag = profile.slice(profile.u32(at + 4, true), profile.u32(at + 8, true));
        return switch (tag.ascii(0, 4)) {
          case "desc" -> text(tag.read(12, most(tag.u32(8, true))), false);
          case "mluc" -> localised(tag);
          default -> "";
        };
      }
    }
    return "";
  }

  /** The English one, else the first. */
  private static String localised(Bytes tag) throws IOException {
    long count = Math.min(MOST_LANGUAGES, tag.u32(8, true));
    long size = tag.u32(12, true);
    long chosen = -1;
    for (long i = count - 1; i >= 0; i--) {
      long at = 16 + i * size;
      if ((i == 0 && chosen < 0) || tag.ascii(at, 2).equals("en")) {
        chosen = at;
      }
    }
    return chosen < 0
        ? ""
        : text(tag.read(tag.u32(chosen + 8, true), most(tag.u32(chosen + 4, true))), true);
  }

  private static int most(long length) {
    return (int) Math.min(2L * LONGEST, length);
  }

  private static String text(byte[] bytes, boolean wide) {
    var text = new String(bytes, wide ? StandardCharsets.UTF_16BE : StandardCharsets.ISO_8859_1);
    int end = text.indexOf('\0');
    return text.substring(0, Math.min(LONGEST, end < 0 ? text.length() : end)).strip();
  }
}
