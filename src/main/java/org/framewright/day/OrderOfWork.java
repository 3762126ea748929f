package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.framewright.base.Durations;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/**
 * An order of what is left to shoot in which less has to be changed. It is a proposal: a person
 * decides.
 *
 * @param before what is before the camera, or was last on this day
 * @param given what is left, in the order in which it comes: from the setup on set round the list,
 *     pickups after all else
 * @param proposed the same setups; the given order where none was found that is better
 * @param list the codes of the whole list with what is left in the proposed order
 * @param times how long changes take
 * @param exact whether none is better
 * @param stay the codes of setups that a person wants to stay where they are
 */
public record OrderOfWork(
    Optional<Setup> before,
    List<Line> given,
    List<Line> proposed,
    List<String> list,
    ChangeTimes times,
    boolean exact,
    Set<String> stay) {
  /** More than any change takes, and little enough to be added up without end. */
  private static final long MOST_WEIGHT = 1L << 40;

  private static final List<Change> KINDS = List.of(Change.values());

  public OrderOfWork {
    given = List.copyOf(given);
    proposed = List.copyOf(proposed);
    list = List.copyOf(list);
    stay = Set.copyOf(stay);
  }

  /**
   * A setup in its order.
   *
   * @param changes what is changed before it
   */
  public record Line(Setup setup, Set<Change> changes) {
    public Line {
      changes = changes.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(changes));
    }
  }

  /** A proposal for a job as it is now. */
  public static OrderOfWork of(
      Job job, FrameScan scan, JobState state, DayHours hours, Set<String> stay) {
    var list = job.shotList();
    var traits = new Traits();
    return of(
        list,
        state,
        before(list, state, hours, job.now()),
        ChangeTimes.of(Gaps.of(job.frameLines(scan), list, traits, hours)),
        traits,
        stay);
  }

  static OrderOfWork of(
      ShotList list,
      JobState state,
      Optional<Setup> before,
      ChangeTimes times,
      Traits traits,
      Set<String> stay) {
    var places = left(list, state);
    var given = places.stream().map(list.setups()::get).toList();
    var found = search(given, blocks(given, state, stay), before, times, traits);
    var proposed = found.order().stream().map(given::get).toList();
    var codes = new ArrayList<>(list.codes());
    for (int i = 0; i < places.size(); i++) {
      codes.set(places.get(i), proposed.get(i).code());
    }
    return new OrderOfWork(
        before,
        lines(before, given, traits),
        lines(before, proposed, traits),
        codes,
        times,
        found.exact(),
        stay);
  }

  /** The one on set, else the one that was there last on this day. */
  private static Optional<Setup> before(
      ShotList list, JobState state, DayHours hours, Instant now) {
    return state
        .onSet()
        .map(set -> set.setup())
        .or(
            () ->
                state.spans().isEmpty() || !hours.isOneDay(state.spans().getLast().from(), now)
                    ? Optional.empty()
                    : Optional.of(state.spans().getLast().setup()))
        .flatMap(list::setup);
  }

  /** The places in the list of what is left, in the order in which it comes. */
  private static List<Integer> left(ShotList list, JobState state) {
    int size = list.setups().size();
    int from = state.onSet().map(set -> list.codes().indexOf(set.setup()) + 1).orElse(0);
    var left = new ArrayList<Integer>();
    for (var wanted : List.of(SetupState.TO_SHOOT, SetupState.PICKUP)) {
      IntStream.range(0, size)
          .map(i -> (from + i) % size)
          .filter(place -> state.of(list.codes().get(place)).state() == wanted)
          .forEach(left::add);
    }
    return left;
  }

  /** Neighbours of one day change places with each other, and pickups with pickups. */
  private static int[] blocks(List<Setup> given, JobState state, Set<String> stay) {
    var blocks = new int[given.size()];
    int block = 0;
    for (int i = 1; i < blocks.length; i++) {
      var one = given.get(i - 1);
      var next = given.get(i);
      boolean together =
          !stay.contains(one.code())
              && !stay.contains(next.code())
              && group(one, state).equals(group(next, state));
      blocks[i] = together ? block : ++block;
    }
    return blocks;
  }

  private static String group(Setup setup, JobState state) {
    return state.of(setup.code()).state() == SetupState.PICKUP
        ? "pickup"
        : "on " + setup.day().map(String::strip).orElse("");
  }

  private static OrderSearch.Found search(
      List<Setup> given, int[] blocks, Optional<Setup> before, ChangeTimes times, Traits traits) {
    if (given.isEmpty()) {
      return new OrderSearch.Found(List.of(), true);
    }
    var numbers = new HashMap<String, Integer>();
    return OrderSearch.find(
        given.stream().map(setup -> keys(traits.of(setup), numbers)).toArray(int[][]::new),
        weights(times),
        blocks,
        before.map(setup -> keys(traits.of(setup), numbers)).orElse(new int[0]));
  }

  private static int[] keys(List<String> traits, Map<String, Integer> numbers) {
    return traits.stream()
        .mapToInt(trait -> numbers.computeIfAbsent(trait, _ -> numbers.size()))
        .toArray();
  }

  /**
   * What a change of each kind costs: its time, and of two orders that take as long the one with
   * fewer changes. One that was not timed counts as those that were do on average.
   */
  private static long[] weights(ChangeTimes times) {
    long mean =
        Math.round(
            times.learned().values().stream()
                .mapToLong(one -> one.time().toMillis())
                .average()
                .orElse(0));
    return KINDS.stream()
        .map(times.learned()::get)
        .mapToLong(one -> one == null ? mean : one.time().toMillis())
        .map(millis -> Math.min(MOST_WEIGHT, millis * 1_000 + 1))
        .toArray();
  }

  /** Whether less is changed in the proposed order. */
  public boolean isBetter() {
    return !proposed.equals(given);
  }

  private static List<Line> lines(Optional<Setup> before, List<Setup> order, Traits traits) {
    var lines = new ArrayList<Line>();
    var last = before;
    for (var setup : order) {
      lines.add(new Line(setup, last.map(one -> traits.between(one, setup)).orElse(Set.of())));
      last = Optional.of(setup);
    }
    return List.copyOf(lines);
  }

  /** How many changes of each kind an order has; kinds without any are left out. */
  public SortedMap<Change, Integer> changes(List<Line> order) {
    var changes = new TreeMap<Change, Integer>();
    order.forEach(line -> line.changes().forEach(one -> changes.merge(one, 1, Integer::sum)));
    return changes;
  }

  /** How many changes an order has. */
  public int count(List<Line> order) {
    return changes(order).values().stream().mapToInt(count -> count).sum();
  }

  /** The time that the proposed order saves; none where nobody knows, or it saves none. */
  public Optional<Duration> saves() {
    var saved = times.of(changes(given)).minus(times.of(changes(proposed)));
    return isBetter() && saved.compareTo(Duration.ZERO) > 0 ? Optional.of(saved) : Optional.empty();
  }

  /** The changes of an order: {@code 5 changes: model 2, rack 3}. */
  public Text said(List<Line> order) {
    var changes = changes(order);
    int count = count(order);
    return changes.size() < 2
        ? changes.entrySet().stream()
            .map(one -> one.getKey().counted(one.getValue()))
            .findFirst()
            .orElse(Text.of("no change"))
        : Text.counted(
            "{0} change: {1}",
            "{0} changes: {1}",
            count,
            Change.all(
                changes.entrySet().stream()
                    .map(one -> Text.of("{0} {1}", one.getKey().said(), one.getValue()))
                    .toList()));
  }

  /** In one line what it saves; none where it is no better. */
  public Optional<Text> gain() {
    if (!isBetter()) {
      return Optional.empty();
    }
    var now = Text.counted("{0} change", "{0} changes", count(given));
    var then = Text.counted("{0} change", "{0} changes", count(proposed));
    return Optional.of(
        saves()
            .map(
                time ->
                    Text.of(
                        "another order of what is left has {0} in place of {1} and saves about {2}",
                        then, now, Durations.said(time)))
            .orElseGet(
                () -> Text.of("another order of what is left has {0} in place of {1}", then, now)));
  }

  /** How it was found, and what is known of the times, a sentence each. */
  public List<Text> reasons() {
    var reasons = new ArrayList<Text>();
    if (!isBetter()) {
      reasons.add(
          exact
              ? Text.of("No other order has less to be changed.")
              : Text.of("No other order was found that has less to be changed."));
    } else {
      reasons.add(
          exact
              ? Text.of("All orders were weighed, and none has less to be changed.")
              : Text.of(
                  "There are too many orders to weigh all of them; of those that were tried, none"
                      + " has less to be changed."));
    }
    reasons.add(
        Text.of(
            "What is done or on set stays. The others change places with neighbours that the list"
                + " plans for the same day; pickups come last, among themselves."));
    if (!stay.isEmpty()) {
      reasons.add(
          Text.of(
              "You want these to stay where they are: {0}",
              String.join(
                  ", ",
                  given.stream()
                      .map(line -> line.setup().code())
                      .filter(stay::contains)
                      .map(PlainText::line)
                      .toList())));
    }
    if (isBetter()) {
      times(reasons);
    }
    return List.copyOf(reasons);
  }

  private void times(List<Text> reasons) {
    times.whyNone().ifPresent(reasons::add);
    if (times.learned().isEmpty()) {
      return;
    }
    var kinds = new EnumMap<Change, Integer>(Change.class);
    kinds.putAll(changes(given));
    changes(proposed).forEach((kind, count) -> kinds.merge(kind, count, Math::max));
    var unknown = new ArrayList<Text>();
    for (var kind : kinds.keySet()) {
      var one = times.learned().get(kind);
      if (one == null) {
        unknown.add(kind.said());
      } else {
        reasons.add(
            one.shared()
                ? Text.of(
                    "Change of {0}: {1} more, its even share of {2} times that it came with another"
                        + " change.",
                    kind.said(), Durations.said(one.time()), one.seen())
                : Text.of(
                    "Change of {0}: {1} more, the median of {2} against that of {3} without a"
                        + " change.",
                    kind.said(), Durations.said(one.time()), one.seen(), times.without()));
      }
    }
    if (!unknown.isEmpty()) {
      reasons.add(
          Text.of(
              "Too seldom seen to know how long they take, so that they count as the others do on"
                  + " average: {0}",
              Change.all(unknown)));
    }
  }
}
