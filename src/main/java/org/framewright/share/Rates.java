package org.framewright.share;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.LongSupplier;

/** How often each of many may do something: so many at once, and so many a second in the long. */
final class Rates {
  /** Whoever was heard of longest ago is forgotten first, which lets them begin anew. */
  private static final int MOST_KNOWN = 4096;

  private static final class Left {
    double count;
    long at;
  }

  private final int atOnce;
  private final double aSecond;
  private final LongSupplier nanos;
  private final Map<String, Left> left =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Left> eldest) {
          return size() > MOST_KNOWN;
        }
      };

  Rates(int atOnce, double aSecond, LongSupplier nanos) {
    this.atOnce = atOnce;
    this.aSecond = aSecond;
    this.nanos = nanos;
  }

  /** Counts once more; where that is too often, in how many seconds it may be tried again. */
  synchronized OptionalInt take(String who) {
    long now = nanos.getAsLong();
    var mine =
        left.computeIfAbsent(
            who,
            _ -> {
              var fresh = new Left();
              fresh.count = atOnce;
              fresh.at = now;
              return fresh;
            });
    mine.count = Math.min(atOnce, mine.count + (now - mine.at) / 1e9 * aSecond);
    mine.at = now;
    if (mine.count >= 1) {
      mine.count--;
      return OptionalInt.empty();
    }
    return OptionalInt.of(Math.max(1, (int) Math.ceil((1 - mine.count) / aSecond)));
  }
}
