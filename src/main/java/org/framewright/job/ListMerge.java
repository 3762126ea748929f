package org.framewright.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/**
 * A client's new list, put over the one that a job has: what is done stays.
 *
 * @param change what it changes
 * @param merged the list that comes of it
 */
record ListMerge(ListChange change, ShotList merged) {

  /**
   * Merges all of a list. A setup that it no longer has stays if it was worked on.
   *
   * @param isWorkedOn whether work was done on a setup, by its canonical key
   */
  static ListMerge of(ShotList before, ShotList incoming, Predicate<String> isWorkedOn) {
    var change = ListChange.between(before, incoming, setup -> isWorkedOn.test(key(setup)));
    return new ListMerge(change, merge(before, incoming.setups(), change.kept()));
  }

  /**
   * Merges only the lines that were accepted, by their setups' codes: a new setup comes, a changed
   * one changes, a missing one goes only if its code is among them.
   */
  static ListMerge of(
      ShotList before, ShotList incoming, Predicate<String> isWorkedOn, Set<String> acceptedCodes) {
    var accepted = acceptedCodes.stream().map(Setup::canonicalKey).collect(Collectors.toSet());
    var old = new HashMap<String, Setup>();
    before.setups().forEach(setup -> old.put(key(setup), setup));
    var after = new ArrayList<Setup>();
    var there = new HashSet<String>();
    for (var setup : incoming.setups()) {
      there.add(key(setup));
      if (accepted.contains(key(setup))) {
        after.add(setup);
      } else if (old.containsKey(key(setup))) {
        after.add(old.get(key(setup)));
      }
    }
    var staying =
        before.setups().stream()
            .filter(setup -> !there.contains(key(setup)) && !accepted.contains(key(setup)))
            .toList();
    return of(before, merge(before, after, staying), isWorkedOn);
  }

  /** The event that says so; nothing where nothing changes. */
  Optional<Event> event() {
    if (change.isEmpty()) {
      return Optional.empty();
    }
    var put = new ArrayList<>(change.added());
    change.changed().forEach(changed -> put.add(changed.after()));
    return Optional.of(
        new Event.ListChanged(
            put, change.removed().stream().map(Setup::code).toList(), merged.codes()));
  }

  private static String key(Setup setup) {
    return Setup.canonicalKey(setup.code());
  }

  /** The new setups with those that stay, each behind the one that it stood behind before. */
  private static ShotList merge(ShotList before, List<Setup> incoming, List<Setup> staying) {
    var stays = staying.stream().map(ListMerge::key).collect(Collectors.toSet());
    var comes = incoming.stream().map(ListMerge::key).collect(Collectors.toSet());
    var first = new ArrayList<Setup>();
    var behind = new HashMap<String, List<Setup>>();
    // Those that stand one behind the other stay so, behind the last one before that comes.
    var at = first;
    for (var setup : before.setups()) {
      if (comes.contains(key(setup))) {
        at = new ArrayList<>();
        behind.put(key(setup), at);
      } else if (stays.contains(key(setup))) {
        at.add(setup);
      }
    }
    var merged = new ArrayList<>(first);
    for (var setup : incoming) {
      merged.add(setup);
      merged.addAll(behind.getOrDefault(key(setup), List.of()));
    }
    return new ShotList(merged);
  }
}
