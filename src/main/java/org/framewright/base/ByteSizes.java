package org.framewright.base;

import java.util.Locale;

/** Sizes in words; decimal, as cards and disks are sold. A unit that was begun counts. */
public final class ByteSizes {
  private static final long KILO = 1_000;
  private static final long MEGA = 1_000_000;
  private static final long GIGA = 1_000_000_000;

  private ByteSizes() {}

  /** {@code 12 kB}, {@code 5 MB}, {@code 5.1 GB}. */
  public static String words(long bytes) {
    return bytes < MEGA ? Math.ceilDiv(bytes, KILO) + " kB" : large(bytes);
  }

  /** The same with nothing smaller than {@code 1 MB}. */
  public static String large(long bytes) {
    return bytes < GIGA ? megabytes(bytes) : String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
  }

  /** {@code 5100 MB}. */
  public static String megabytes(long bytes) {
    return Math.ceilDiv(bytes, MEGA) + " MB";
  }
}
