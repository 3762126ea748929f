package org.framewright.cli;

import org.framewright.base.ByteSizes;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A size as people write it, {@code 20GB} or {@code 1.5 TB}; decimal, as disks are sold. */
final class SizeConverter implements ITypeConverter<Long> {
  @Override
  public Long convert(String text) {
    return ByteSizes.read(text)
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "'" + text + "' is not a size such as 500MB, 20GB or 1.5TB"));
  }
}
