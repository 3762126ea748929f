package org.framewright.base;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;

/**
 * Which version of the program this is: that of the pom, which the build writes into a resource.
 */
public final class Version {
  private static final String WHERE = "/org/framewright/version.properties";

  /** What stands there before the build has filled it in, as where an editor compiles. */
  private static final String UNFILLED = "${";

  private Version() {}

  /** As in {@code 0.1.0}; {@code unknown} where no build said. */
  public static String current() {
    try (InputStream in = Version.class.getResourceAsStream(WHERE)) {
      var all = new Properties();
      if (in != null) {
        all.load(in);
      }
      var version = all.getProperty("version", UNFILLED);
      return version.startsWith(UNFILLED) ? "unknown" : version;
    } catch (IOException _) {
      return "unknown";
    }
  }
}
