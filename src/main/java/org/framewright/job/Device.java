package org.framewright.job;

import java.util.regex.Pattern;

/**
 * A phone or a tablet that takes part in a job by way of a computer, which keeps its log for it.
 *
 * @param name its name in the names of log files: {@code page-} and eight hexadecimal digits, so
 *     that it is never that of a computer that was not named so on purpose
 */
public record Device(String name) {
  private static final Pattern LEGAL = Pattern.compile("page-[0-9a-f]{8}");

  public Device {
    if (!isLegal(name)) {
      throw new IllegalArgumentException("not a device's name: " + name);
    }
  }

  /** Whether a device may have this name. */
  public static boolean isLegal(String name) {
    return LEGAL.matcher(name).matches();
  }
}
