package org.framewright.naming;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.framewright.base.NameKey;

/** What common file systems may take for the same name: NFC(lower(upper(NFD(name)))). */
final class CollisionKey {
  /** Two characters whose keys are equal, or one the beginning of the other. */
  record Clash(char first, char second, String firstKey, String secondKey) {}

  private record Ranges(char low, char high, char otherLow, char otherHigh) {}

  private final Map<Character, String> known = new HashMap<>();
  private final Map<Ranges, List<Clash>> clashes = new HashMap<>();

  static String of(String name) {
    return NameKey.of(name);
  }

  String of(char c) {
    return known.computeIfAbsent(c, k -> of(String.valueOf(k)));
  }

  /** One example of each way in which two ranges of characters clash, equal characters included. */
  List<Clash> clashes(char low, char high, char otherLow, char otherHigh) {
    return clashes.computeIfAbsent(
        new Ranges(low, high, otherLow, otherHigh), ranges -> find(low, high, otherLow, otherHigh));
  }

  private List<Clash> find(char low, char high, char otherLow, char otherHigh) {
    var found = new ArrayList<Clash>();
    boolean equal = false;
    boolean different = false;
    for (int c = low; c <= high; c++) {
      var key = of((char) c);
      for (int d = otherLow; d <= otherHigh; d++) {
        var other = of((char) d);
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
