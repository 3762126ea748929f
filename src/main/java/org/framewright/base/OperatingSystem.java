package org.framewright.base;

import java.util.Locale;

/** The system that the program runs on, as far as it matters how files behave there. */
public enum OperatingSystem {
  LINUX,
  MACOS,
  WINDOWS,
  /** One that is none of these; what holds on Unix is expected of it. */
  OTHER;

  /** That of this computer. */
  public static OperatingSystem current() {
    return of(System.getProperty("os.name", ""));
  }

  /** By its name as Java gives it in the property {@code os.name}. */
  public static OperatingSystem of(String name) {
    var lower = name.toLowerCase(Locale.ROOT);
    if (lower.startsWith("linux")) {
      return LINUX;
    }
    if (lower.startsWith("mac") || lower.startsWith("darwin")) {
      return MACOS;
    }
    return lower.startsWith("windows") ? WINDOWS : OTHER;
  }
}
