package org.framewright.handoff.verify;

import java.util.Set;
import java.util.regex.Pattern;

/** Which names may stand for files of a package, whatever system reads them. */
public final class PayloadName {
  private static final Pattern SEPARATORS = Pattern.compile("[/\\\\]");
  private static final Pattern DRIVE = Pattern.compile("[A-Za-z]:.*", Pattern.DOTALL);
  private static final Set<String> STEPS = Set.of("", ".", "..");

  private PayloadName() {}

  /** Whether it is the name of a file in a folder: no path, nothing that leads elsewhere. */
  public static boolean isFileName(String name) {
    return !SEPARATORS.matcher(name).find() && staysInside(name);
  }

  /**
   * Whether a relative path leads to something below its folder, be it read with {@code /} or with
   * {@code \} between names. RFC 8493, section 5.2, warns of absolute paths, {@code ..} and {@code
   * ~}.
   */
  public static boolean staysInside(String path) {
    if (path.indexOf('\0') >= 0 || path.startsWith("~") || DRIVE.matcher(path).matches()) {
      return false;
    }
    return SEPARATORS.splitAsStream(path + "/end").noneMatch(name -> STEPS.contains(name));
  }
}
