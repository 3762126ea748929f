package org.framewright.mhl;

import java.util.Arrays;

/** Paths as lists have them: relative, {@code /} between the names, nothing that leads outside. */
final class MhlPath {
  static final String FOLDER = "ascmhl";
  private static final int LONGEST = 8192;

  private MhlPath() {}

  /** Whether a path stays below the folder that it is about. */
  static boolean isSafe(String path) {
    return !path.isEmpty()
        && path.length() <= LONGEST
        && path.indexOf('\0') < 0
        && Arrays.stream(path.split("/", -1))
            .noneMatch(name -> name.isEmpty() || name.equals(".") || name.equals(".."));
  }

  /** Whether it is the name of a file beside the one that speaks of it. */
  static boolean isName(String path) {
    return isSafe(path) && path.indexOf('/') < 0 && path.indexOf('\\') < 0;
  }
}
