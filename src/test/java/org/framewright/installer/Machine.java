package org.framewright.installer;

import java.util.Locale;
import org.framewright.base.OperatingSystem;

/** This computer, as packages name it. */
final class Machine {
  private Machine() {}

  static String system() {
    return OperatingSystem.current().name().toLowerCase(Locale.ROOT);
  }

  /** Its processor as RPM, macOS and others name it. */
  static String processor() {
    return arm() ? "aarch64" : "x86_64";
  }

  /** Its processor as Debian names it. */
  static String debian() {
    return arm() ? "arm64" : "amd64";
  }

  /** Its processor as WiX names it. */
  static String wix() {
    return arm() ? "arm64" : "x64";
  }

  private static boolean arm() {
    return System.getProperty("os.arch").equals("aarch64");
  }
}
