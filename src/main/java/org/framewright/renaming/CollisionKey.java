package org.framewright.renaming;

import java.text.Normalizer;
import java.util.Locale;

/**
 * What a name becomes on the least distinguishing file system: two names with one key are taken to
 * be one name, wherever the files lie. It folds case, decomposed and composed letters, ligatures
 * and invisible characters; so it may see a collision where this volume sees none, never the
 * reverse.
 */
final class CollisionKey {
  private CollisionKey() {}

  static String of(String name) {
    if (isAscii(name)) {
      return name.toLowerCase(Locale.ROOT);
    }
    var decomposed = Normalizer.normalize(name, Normalizer.Form.NFD);
    var folded = decomposed.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
    return Normalizer.normalize(withoutInvisible(folded), Normalizer.Form.NFC);
  }

  private static boolean isAscii(String name) {
    for (int i = 0; i < name.length(); i++) {
      if (name.charAt(i) >= 128) {
        return false;
      }
    }
    return true;
  }

  /** Zero width and direction marks, which HFS+ ignores when it compares names. */
  private static String withoutInvisible(String name) {
    var kept = new StringBuilder(name.length());
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      boolean invisible =
          (c >= 0x200B && c <= 0x200F)
              || (c >= 0x202A && c <= 0x202E)
              || (c >= 0x2060 && c <= 0x206F)
              || c == 0xFEFF;
      if (!invisible) {
        kept.append(c);
      }
    }
    return kept.toString();
  }
}
