package org.framewright.base;

import java.text.Normalizer;
import java.util.Locale;

/**
 * What a name becomes on the least distinguishing file system: two names with one key are taken to
 * be one name, wherever the files lie. It folds case, decomposed and composed letters, ligatures,
 * the final sigma and invisible characters; so it may see a collision where a volume sees none,
 * never the reverse.
 */
public final class NameKey {
  private NameKey() {}

  /** The key of a name, or of a path with {@code /} between its names. */
  public static String of(String name) {
    if (isAscii(name)) {
      return name.toLowerCase(Locale.ROOT);
    }
    var decomposed = Normalizer.normalize(withoutInvisible(name), Normalizer.Form.NFD);
    var folded = decomposed.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
    // The final sigma is a matter of context, not of the letter.
    return Normalizer.normalize(folded, Normalizer.Form.NFC).replace('\u03C2', '\u03C3');
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
