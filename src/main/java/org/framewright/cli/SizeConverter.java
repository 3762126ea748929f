package org.framewright.cli;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A size as people write it, {@code 20GB} or {@code 1.5 TB}; decimal, as disks are sold. */
final class SizeConverter implements ITypeConverter<Long> {
  private static final Pattern SIZE =
      Pattern.compile("([0-9]{1,9}(?:[.][0-9]{1,3})?) ?(KB|MB|GB|TB)", Pattern.CASE_INSENSITIVE);

  @Override
  public Long convert(String text) {
    var match = SIZE.matcher(text.strip());
    if (!match.matches() || new BigDecimal(match.group(1)).signum() == 0) {
      throw new TypeConversionException(
          "'" + text + "' is not a size such as 500MB, 20GB or 1.5TB");
    }
    int thousands =
        switch (match.group(2).toUpperCase(Locale.ROOT)) {
          case "KB" -> 3;
          case "MB" -> 6;
          case "GB" -> 9;
          default -> 12;
        };
    return new BigDecimal(match.group(1)).scaleByPowerOfTen(thousands).longValueExact();
  }
}
