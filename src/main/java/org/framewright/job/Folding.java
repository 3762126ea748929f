package org.framewright.job;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The fold of a job's events as they come in. Events are applied in the order of their stamps. One
 * that comes with an earlier stamp than some that were applied, from another station, or that takes
 * an earlier one back, undoes the applied ones back to its place and does them again behind it; how
 * long that takes is a matter of how far back the place is, not of how long the job is. The result
 * is that of applying all in order at once.
 *
 * <p>For one thread; the folds that it hands out never change.
 */
final class Folding {
  /** So many of the latest events can be undone one by one; further back, all is folded anew. */
  private static final int UNDOABLE_EVENTS = 4_096;

  /** So many steps of them; an event may have thousands. */
  private static final int UNDOABLE_STEPS = 100_000;

  private final List<Entry> entries = new ArrayList<>();
  private final Set<Stamp> takenBack = new HashSet<>();

  /** How to undo the last entries, the latest last. */
  private final Deque<List<Runnable>> undoings = new ArrayDeque<>();

  private int undoingSteps;
  private LogState state = new LogState();
  private long applied;

  /** Takes events in, in any order. */
  void add(Collection<Entry> news) {
    var sorted = new ArrayList<>(news);
    sorted.sort(Comparator.comparing(Entry::stamp));
    var from = Optional.<Stamp>empty();
    if (!sorted.isEmpty() && !entries.isEmpty()) {
      var first = sorted.getFirst().stamp();
      from = Optional.of(first).filter(stamp -> stamp.compareTo(entries.getLast().stamp()) < 0);
    }
    for (var entry : sorted) {
      if (entry.event() instanceof Event.TakenBack taken
          && takenBack.add(taken.event())
          && place(taken.event()) >= 0
          && from.map(stamp -> taken.event().compareTo(stamp) < 0).orElse(true)) {
        from = Optional.of(taken.event());
      }
    }
    var pending = from.map(stamp -> merged(rewind(stamp), sorted)).orElse(sorted);
    for (int i = 0; i < pending.size(); i++) {
      apply(pending.get(i), pending.size() - i <= UNDOABLE_EVENTS);
    }
  }

  private int place(Stamp stamp) {
    int low = 0;
    int high = entries.size() - 1;
    while (low <= high) {
      int middle = (low + high) >>> 1;
      int order = entries.get(middle).stamp().compareTo(stamp);
      if (order == 0) {
        return middle;
      }
      if (order < 0) {
        low = middle + 1;
      } else {
        high = middle - 1;
      }
    }
    return -1 - low;
  }

  /** Undoes all events from a stamp on, and hands them out in order. */
  private List<Entry> rewind(Stamp stamp) {
    int place = place(stamp);
    int from = place >= 0 ? place : -1 - place;
    if (entries.size() - from > undoings.size()) {
      from = 0;
      undoings.clear();
      undoingSteps = 0;
      state = new LogState();
    }
    var tail = entries.subList(from, entries.size());
    var undone = List.copyOf(tail);
    for (int i = 0; i < undone.size() && !undoings.isEmpty(); i++) {
      var steps = undoings.removeLast();
      undoingSteps -= steps.size();
      steps.reversed().forEach(Runnable::run);
    }
    tail.clear();
    return undone;
  }

  private static List<Entry> merged(List<Entry> one, List<Entry> other) {
    var merged = new ArrayList<Entry>(one.size() + other.size());
    merged.addAll(one);
    merged.addAll(other);
    // Two runs in order: this merges them.
    merged.sort(Comparator.comparing(Entry::stamp));
    return merged;
  }

  private void apply(Entry entry, boolean undoable) {
    entries.add(entry);
    applied++;
    var undoing = new ArrayList<Runnable>(4);
    if (!takenBack.contains(entry.stamp())) {
      state.apply(entry, undoable ? undoing::add : LogState.NO_UNDOING);
    }
    if (!undoable || undoing.size() > UNDOABLE_STEPS) {
      undoings.clear();
      undoingSteps = 0;
      return;
    }
    undoings.addLast(undoing);
    undoingSteps += undoing.size();
    while (undoings.size() > UNDOABLE_EVENTS || undoingSteps > UNDOABLE_STEPS) {
      undoingSteps -= undoings.removeFirst().size();
    }
  }

  /** How many events were applied so far, again and again those that were undone. */
  long applied() {
    return applied;
  }

  /** How many events there are. */
  int size() {
    return entries.size();
  }

  /** What the events make so far. */
  Fold fold() {
    return state.fold();
  }

  /** What the events until a time made, without those that were taken back, whenever that was. */
  Fold at(Instant time) {
    return Fold.of(
        entries.stream()
            .filter(
                entry ->
                    switch (entry.event()) {
                      case Event.ListChanged _,
                          Event.Marked _,
                          Event.Moved _,
                          Event.Given _,
                          Event.GiveEnded _,
                          Event.Taken _ ->
                          !entry.time().isAfter(time);
                      case Event.TakenBack _ -> true;
                      default -> false;
                    })
            .toList());
  }

  /** Whether work was done on a setup, by its canonical key. */
  boolean isWorkedOn(String key) {
    return state.isWorkedOn(key);
  }

  /** The first event that is as wanted. */
  Optional<Entry> first(Predicate<Event> wanted) {
    return entries.stream().filter(entry -> wanted.test(entry.event())).findFirst();
  }

  /** The event of a writer with this number, whether it counts or not. */
  Optional<Entry> numbered(String writer, long number) {
    return entries.reversed().stream()
        .filter(entry -> entry.number() == number)
        .filter(entry -> entry.stamp().station().equals(writer))
        .findFirst();
  }

  boolean isTakenBack(Entry entry) {
    return takenBack.contains(entry.stamp());
  }

  /** The last event of a station that counts and is as wanted. */
  Optional<Entry> last(String station, Predicate<Event> wanted) {
    return entries.reversed().stream()
        .filter(entry -> wanted.test(entry.event()))
        .filter(entry -> entry.stamp().station().equals(station))
        .filter(entry -> !takenBack.contains(entry.stamp()))
        .findFirst();
  }
}
