package org.framewright.day;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.Text;

/**
 * How long changes take, learned from the job: from the last frame of one setup to the first of the
 * next. A change takes as much longer as the median with it is above the median of all times at
 * which nothing had to be changed; one that never came alone is told from those that are known by
 * then.
 *
 * @param learned of what enough was seen
 * @param without how often the next setup began without any change
 * @param usual how long that took in the median; none where it was seen too seldom
 */
public record ChangeTimes(Map<Change, Learned> learned, int without, Optional<Duration> usual) {
  /** A median of fewer is moved by one odd time. Common practice, no source. */
  static final int FEWEST = 3;

  /** Nothing was seen. */
  public static final ChangeTimes NONE = new ChangeTimes(Map.of(), 0, Optional.empty());

  public ChangeTimes {
    learned = learned.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(learned));
  }

  /**
   * What a change takes.
   *
   * @param time beyond what the next setup takes anyhow; from 0 up
   * @param seen how many changes say so
   * @param shared whether it always came with another one, so that they share the time evenly
   */
  public record Learned(Duration time, int seen, boolean shared) {}

  /** The time from one setup's last frame to the next one's first, and what was changed. */
  record Gap(Duration time, Set<Change> changed) {
    Gap {
      changed = Set.copyOf(changed);
    }
  }

  static ChangeTimes of(List<Gap> gaps) {
    var plain = gaps.stream().filter(gap -> gap.changed().isEmpty()).map(Gap::time).toList();
    if (plain.size() < FEWEST) {
      return new ChangeTimes(Map.of(), plain.size(), Optional.empty());
    }
    var usual = median(plain);
    var learned = new EnumMap<Change, Learned>(Change.class);
    var next = best(gaps, usual, learned);
    while (next.isPresent()) {
      learn(next.get().getKey(), next.get().getValue(), learned);
      next = best(gaps, usual, learned);
    }
    return new ChangeTimes(learned, plain.size(), Optional.of(usual));
  }

  /** The change that was seen most often alone, or with what is known; else those together. */
  private static Optional<Map.Entry<Set<Change>, List<Duration>>> best(
      List<Gap> gaps, Duration usual, Map<Change, Learned> learned) {
    return rests(gaps, usual, learned).entrySet().stream()
        .filter(one -> one.getValue().size() >= FEWEST)
        .max(
            Comparator.<Map.Entry<Set<Change>, List<Duration>>, Boolean>comparing(
                    one -> one.getKey().size() == 1)
                .thenComparing(ChangeTimes::byEvidence));
  }

  /** Changes that only come together share their time evenly. */
  private static void learn(
      Set<Change> changes, List<Duration> rest, Map<Change, Learned> learned) {
    var each = notNegative(median(rest)).dividedBy(changes.size());
    var one = new Learned(each, rest.size(), changes.size() > 1);
    changes.forEach(change -> learned.put(change, one));
  }

  /** What is left of each time without what is known, by the changes that are not known. */
  private static Map<Set<Change>, List<Duration>> rests(
      List<Gap> gaps, Duration usual, Map<Change, Learned> learned) {
    var rests = new HashMap<Set<Change>, List<Duration>>();
    for (var gap : gaps) {
      var unknown = EnumSet.noneOf(Change.class);
      var rest = gap.time().minus(usual);
      for (var change : gap.changed()) {
        if (learned.containsKey(change)) {
          rest = rest.minus(learned.get(change).time());
        } else {
          unknown.add(change);
        }
      }
      if (!unknown.isEmpty()) {
        rests.computeIfAbsent(unknown, _ -> new ArrayList<>()).add(rest);
      }
    }
    return rests;
  }

  /** More of them first, of as many the one that stands first in {@link Change}. */
  private static int byEvidence(
      Map.Entry<Set<Change>, List<Duration>> one, Map.Entry<Set<Change>, List<Duration>> other) {
    int more = Integer.compare(one.getValue().size(), other.getValue().size());
    return more != 0 ? more : first(other.getKey()).compareTo(first(one.getKey()));
  }

  private static String first(Set<Change> changes) {
    return List.of(Change.values()).indexOf(Collections.min(changes)) + changes.toString();
  }

  private static Duration notNegative(Duration time) {
    return time.isNegative() ? Duration.ZERO : time;
  }

  /** The middle one, or the mean of the two in the middle. */
  static Duration median(List<Duration> times) {
    var sorted = times.stream().sorted().toList();
    int half = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(half)
        : sorted.get(half - 1).plus(sorted.get(half)).dividedBy(2);
  }

  /** The time of all changes of an order of which the time is known. */
  Duration of(Map<Change, Integer> counts) {
    var sum = Duration.ZERO;
    for (var count : counts.entrySet()) {
      var one = learned.get(count.getKey());
      if (one != null) {
        sum = sum.plus(one.time().multipliedBy(count.getValue()));
      }
    }
    return sum;
  }

  /** Why nothing could be learned; none where something was. */
  public Optional<Text> whyNone() {
    if (!learned.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        usual.isEmpty()
            ? Text.of(
                "The frames tell of fewer than {0} times that the next setup began without any"
                    + " change, so nobody knows how long changes take, and all count alike.",
                FEWEST)
            : Text.of(
                "The frames tell of fewer than {0} changes of each kind, so nobody knows how long"
                    + " they take, and all count alike.",
                FEWEST));
  }
}
