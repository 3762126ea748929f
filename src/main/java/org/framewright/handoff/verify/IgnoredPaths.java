package org.framewright.handoff.verify;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * What media hash lists leave out, by patterns in the usual form of such lists: {@code *} and
 * {@code ?}; with a {@code /} inside or before it a pattern is about a path from its history's
 * folder on, without one about any name; what is in a folder that fits is left out too.
 */
final class IgnoredPaths {
  /** More than any folder needs; afterwards nothing is left out any more. */
  private static final long MOST_STEPS = 1L << 28;

  private final Map<String, Set<String>> patterns = new HashMap<>();
  private long steps;

  /**
   * Takes up the patterns of a history.
   *
   * @param top its folder, with {@code /} at its end; empty for the whole
   */
  void add(String top, Set<String> more) {
    patterns.put(top, more);
  }

  /** Whether a history leaves a path out. */
  boolean matches(String path) {
    return patterns.entrySet().stream()
        .filter(one -> path.startsWith(one.getKey()))
        .anyMatch(
            one ->
                one.getValue().stream()
                    .anyMatch(pattern -> fits(pattern, path.substring(one.getKey().length()))));
  }

  private boolean fits(String pattern, String path) {
    var bare = pattern.endsWith("/") ? pattern.substring(0, pattern.length() - 1) : pattern;
    boolean anchored = bare.indexOf('/') >= 0;
    var form = bare.startsWith("/") ? bare.substring(1) : bare;
    int from = 0;
    for (int to = path.indexOf('/'); ; to = path.indexOf('/', to + 1)) {
      int end = to < 0 ? path.length() : to;
      if (isLike(form, path.substring(anchored ? 0 : from, end))) {
        return true;
      }
      if (to < 0) {
        return false;
      }
      from = to + 1;
    }
  }

  private boolean isLike(String form, String name) {
    int at = 0;
    int star = -1;
    int again = 0;
    int i = 0;
    while (i < name.length()) {
      if (++steps > MOST_STEPS) {
        return false;
      }
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
