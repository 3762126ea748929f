package org.framewright.day;

import java.time.Duration;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.base.Text;

/**
 * What was shot, in the order in which it was, and what is left.
 *
 * @param shot with the working time that each took
 */
record Workload(List<Shot> shot, List<Item> left) {
  Workload {
    shot = List.copyOf(shot);
    left = List.copyOf(left);
  }

  /**
   * A setup.
   *
   * @param size how much of it there is, as far as the list tells: frames wanted, else views, else
   *     1; above 0
   * @param kind what kind of thing it is, where the list says
   */
  record Item(double size, Optional<String> kind) {
    static final Item ONE = new Item(1, Optional.empty());
  }

  /** A setup that was shot, and its working time. */
  record Shot(Item item, Duration time) {}

  /** Setups that nothing is known of but the time that some of them took. */
  static Workload alike(List<Duration> times, int left) {
    return new Workload(
        times.stream().map(time -> new Shot(Item.ONE, time)).toList(),
        Collections.nCopies(left, Item.ONE));
  }

  /** In minutes; something must have been shot. */
  Estimate estimate() {
    return Estimate.of(
        shot.stream()
            .map(one -> new Estimate.Done(one.item().size(), Pace.inMinutes(one.time())))
            .toList(),
        left.stream().map(Item::size).toList());
  }

  /**
   * Why nobody can say how far the estimate may be off; none where somebody can. Where all setups
   * look equally large, kinds that were not shot yet may be anything: in simulated days of which
   * the list has each kind in a block, the range held the truth in a third of them only.
   */
  Optional<Text> whyNoRange() {
    if (shot.size() < Estimate.FEWEST) {
      return Optional.of(Text.of("too few setups were shot to tell how far that may be off"));
    }
    if (Stream.concat(shot.stream().map(Shot::item), left.stream())
            .mapToDouble(Item::size)
            .distinct()
            .count()
        > 1) {
      return Optional.empty();
    }
    var known = new HashSet<Optional<String>>();
    shot.forEach(one -> known.add(one.item().kind()));
    long unknown =
        left.stream()
            .map(Item::kind)
            .filter(kind -> kind.isPresent() && !known.contains(kind))
            .count();
    return unknown == 0
        ? Optional.empty()
        : Optional.of(
            Text.counted(
                "{0} of {1} left is of a kind that was not shot yet",
                "{0} of {1} left are of a kind that was not shot yet", unknown, left.size()));
  }
}
