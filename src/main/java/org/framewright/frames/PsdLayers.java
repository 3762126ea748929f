package org.framewright.frames;

import java.io.IOException;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Blocks of a PSD's layers ("Adobe Photoshop File Formats Specification", additional layer
 * information): a signature, a key, a length and that many bytes, filled up to four. The number of
 * layers stands at the beginning of one of them.
 */
final class PsdLayers {
  private static final Set<String> COUNTED = Set.of("Layr", "Lr16", "Lr32");
  private static final int MOST_BLOCKS = 4096;

  private PsdLayers() {}

  /**
   * How many layers the blocks tell of.
   *
   * @param wide the keys of which the length has eight bytes
   */
  static int in(Bytes blocks, boolean bigEndian, Predicate<String> wide) throws IOException {
    long at = 0;
    for (int i = 0; i < MOST_BLOCKS && blocks.holds(at, 12); i++) {
      var signature = word(blocks, at, bigEndian);
      if (!signature.equals("8BIM") && !signature.equals("8B64")) {
        return 0;
      }
      var key = word(blocks, at + 4, bigEndian);
      boolean isWide = wide.test(key);
      long length = isWide ? blocks.u64(at + 8, bigEndian) : blocks.u32(at + 8, bigEndian);
      long data = at + 8 + (isWide ? 8 : 4);
      if (COUNTED.contains(key) && length >= 2) {
        return count(blocks, data, bigEndian);
      }
      blocks.slice(data, length);
      at = data + (length + 3) / 4 * 4;
    }
    return 0;
  }

  /** The count is negative where the first channel besides the colours is transparency. */
  static int count(Bytes bytes, long at, boolean bigEndian) throws IOException {
    return Math.abs((short) bytes.u16(at, bigEndian));
  }

  private static String word(Bytes blocks, long at, boolean bigEndian) throws IOException {
    var word = blocks.ascii(at, 4);
    return bigEndian ? word : new StringBuilder(word).reverse().toString();
  }
}
