package org.framewright.naming;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.framewright.base.NameKey;

/** Which characters of two ranges are one on a file system that folds case ({@link NameKey}). */
final class CharacterClashes {
  /** Two characters whose keys are equal, or one the beginning of the other. */
  record Clash(char first, char second, String firstKey, String secondKey) {}

  private record Ranges(char low, char high, char otherLow, char otherHigh) {}

  private final Effort effort;
  private final Map<Character, String> known = new HashMap<>();
  private final Map<Ranges, List<Clash>> clashes = new HashMap<>();

  CharacterClashes(Effort effort) {
    this.effort = effort;
  }

  String keyOf(char c) {
    return known.computeIfAbsent(c, k -> NameKey.of(String.valueOf(k)));
  }

  /** One example of each way in which two ranges of characters clash, equal characters included. */
  List<Clash> of(char low, char high, char otherLow, char otherHigh) throws Effort.TooLarge {
    var ranges = new Ranges(low, high, otherLow, otherHigh);
    var found = clashes.get(ranges);
    if (found == null) {
      found = find(low, high, otherLow, otherHigh);
      clashes.put(ranges, found);
    }
    effort.spend(found.size());
    return found;
  }

  private List<Clash> find(char low, char high, char otherLow, char otherHigh)
      throws Effort.TooLarge {
    effort.spend((high - low + 1L) * (otherHigh - otherLow + 1L));
    var found = new ArrayList<Clash>();
    boolean equal = false;
    boolean different = false;
    for (int c = low; c <= high; c++) {
      var key = keyOf((char) c);
      for (int d = otherLow; d <= otherHigh; d++) {
        var other = keyOf((char) d);
        if (key.equals(other)) {
          if (c == d ? !equal : !different) {
            found.add(new Clash((char) c, (char) d, key, other));
          }
          equal |= c == d;
          different |= c != d;
        } else if (key.startsWith(other) || other.startsWith(key)) {
          found.add(new Clash((char) c, (char) d, key, other));
        }
      }
    }
    return found;
  }
}
