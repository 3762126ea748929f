package org.framewright.handoff.verify;

/**
 * Patterns of what a media hash list leaves out, in the usual form of such lists: {@code *} and
 * {@code ?}; with a {@code /} inside or before it a pattern is about a path from the top on,
 * without one about any name; what is in a folder that fits is left out too.
 */
final class IgnoredPaths {
  private IgnoredPaths() {}

  static boolean matches(String pattern, String path) {
    var bare = pattern.endsWith("/") ? pattern.substring(0, pattern.length() - 1) : pattern;
    boolean anchored = bare.indexOf('/') >= 0;
    var form = bare.startsWith("/") ? bare.substring(1) : bare;
    int from = 0;
    for (int to = path.indexOf('/'); ; to = path.indexOf('/', to + 1)) {
      int end = to < 0 ? path.length() : to;
      if (fits(form, path.substring(anchored ? 0 : from, end))) {
        return true;
      }
      if (to < 0) {
        return false;
      }
      from = to + 1;
    }
  }

  /** In time that is at most the product of the lengths. */
  private static boolean fits(String form, String name) {
    int at = 0;
    int star = -1;
    int again = 0;
    int i = 0;
    while (i < name.length()) {
      if (at < form.length() && form.charAt(at) == '*') {
        star = at++;
        again = i;
      } else if (at < form.length()
          && (form.charAt(at) == '?' || form.charAt(at) == name.charAt(i))) {
        at++;
        i++;
      } else if (star >= 0) {
        at = star + 1;
        i = ++again;
      } else {
        return false;
      }
    }
    while (at < form.length() && form.charAt(at) == '*') {
      at++;
    }
    return at == form.length();
  }
}
