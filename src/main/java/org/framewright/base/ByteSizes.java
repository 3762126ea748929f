package org.framewright.base;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.regex.Pattern;

/** Sizes in words; decimal, as cards and disks are sold. A unit that was begun counts. */
public final class ByteSizes {
  static final long KILO = 1_000;
  static final long MEGA = 1_000_000;
  static final long GIGA = 1_000_000_000;

  private static final Pattern WRITTEN =
      Pattern.compile("([0-9]{1,9}(?:[.,][0-9]{1,3})?)\\s?(KB|MB|GB|TB)", Pattern.CASE_INSENSITIVE);

  private ByteSizes() {}

  /** {@code 12 kB}, {@code 5 MB}, {@code 5.1 GB}. */
  public static String words(long bytes) {
    return bytes < MEGA ? Math.ceilDiv(bytes, KILO) + " kB" : large(bytes);
  }

  /** The same, to stand in a text of any language. */
  public static Text.Size of(long bytes) {
    return new Text.Size(bytes, false);
  }

  /** The same in megabytes however large it is, so that two are easily compared. */
  public static Text.Size inMegabytes(long bytes) {
    return new Text.Size(bytes, true);
  }

  /** The same with nothing smaller than {@code 1 MB}. */
  public static String large(long bytes) {
    return bytes < GIGA ? megabytes(bytes) : String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
  }

  /**
   * A size as people write it, {@code 20GB}, {@code 1.5 TB} or {@code 1,5 TB}; nothing where it is
   * none, or nothing at all.
   */
  public static OptionalLong read(String text) {
    var match = WRITTEN.matcher(text.strip());
    if (!match.matches()) {
      return OptionalLong.empty();
    }
    var number = new BigDecimal(match.group(1).replace(',', '.'));
    int thousands =
        switch (match.group(2).toUpperCase(Locale.ROOT)) {
          case "KB" -> 3;
          case "MB" -> 6;
          case "GB" -> 9;
          default -> 12;
        };
    return number.signum() == 0
        ? OptionalLong.empty()
        : OptionalLong.of(number.scaleByPowerOfTen(thousands).longValueExact());
  }

  /** {@code 5100 MB}. */
  public static String megabytes(long bytes) {
    return Math.ceilDiv(bytes, MEGA) + " MB";
  }
}
