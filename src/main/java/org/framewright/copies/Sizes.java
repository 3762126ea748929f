package org.framewright.copies;

import java.util.Locale;

/** Sizes in words. */
final class Sizes {
  private Sizes() {}

  /** {@code 12 kB}, {@code 5 MB}, {@code 5.1 GB}; decimal, as cards and disks are sold. */
  static String words(long bytes) {
    if (bytes < 1_000_000) {
      return Math.ceilDiv(bytes, 1000) + " kB";
    }
    return bytes < 1_000_000_000
        ? Math.ceilDiv(bytes, 1_000_000) + " MB"
        : String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
  }
}
