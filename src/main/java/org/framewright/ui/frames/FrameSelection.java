package org.framewright.ui.frames;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * Which things of a grid are chosen, and the cursor that the keys move. A range is stretched from
 * an anchor; things keep being chosen when the order around them changes.
 */
final class FrameSelection<K> {
  private List<K> order = List.of();
  private Map<K, Integer> positions = Map.of();
  private int anchor = -1;
  private final ReadOnlyIntegerWrapper cursor = new ReadOnlyIntegerWrapper(-1);
  private final ReadOnlyObjectWrapper<Set<K>> chosen = new ReadOnlyObjectWrapper<>(Set.of());

  /** Where the keys are; -1 in an empty grid. */
  ReadOnlyIntegerProperty cursor() {
    return cursor.getReadOnlyProperty();
  }

  /** What is chosen now; each change is a new set. */
  ReadOnlyObjectProperty<Set<K>> chosen() {
    return chosen.getReadOnlyProperty();
  }

  /** What is chosen, in the grid's order. */
  List<K> inOrder() {
    return order.stream().filter(chosen.get()::contains).toList();
  }

  /** Replaces what the grid holds; the cursor stays with its thing, or near its place. */
  void over(List<K> things) {
    var held = at(cursor.get());
    var anchored = at(anchor);
    order = List.copyOf(things);
    positions = HashMap.newHashMap(order.size());
    for (var i = 0; i < order.size(); i++) {
      positions.put(order.get(i), i);
    }
    var kept = new HashSet<>(chosen.get());
    kept.retainAll(positions.keySet());
    var place = position(held).orElse(Math.min(Math.max(cursor.get(), 0), order.size() - 1));
    cursor.set(place);
    anchor = position(anchored).orElse(place);
    if (kept.isEmpty() && place >= 0) {
      kept.add(order.get(place));
    }
    choose(kept);
  }

  /** Goes to a place and chooses what is there alone. */
  void go(int place) {
    if (order.isEmpty()) {
      return;
    }
    var to = Math.clamp(place, 0, order.size() - 1);
    cursor.set(to);
    anchor = to;
    choose(Set.of(order.get(to)));
  }

  /** Goes to a thing and chooses it alone, if the grid holds it; says whether it does. */
  boolean goTo(K thing) {
    var place = position(thing);
    place.ifPresent(this::go);
    return place.isPresent();
  }

  /** Goes to a place and chooses all between the anchor and it. */
  void stretch(int place) {
    if (order.isEmpty()) {
      return;
    }
    var to = Math.clamp(place, 0, order.size() - 1);
    if (anchor < 0) {
      anchor = to;
    }
    cursor.set(to);
    choose(new LinkedHashSet<>(order.subList(Math.min(anchor, to), Math.max(anchor, to) + 1)));
  }

  /** Goes to a place and adds what is there to the chosen, or takes it out. */
  void toggle(int place) {
    if (order.isEmpty()) {
      return;
    }
    var to = Math.clamp(place, 0, order.size() - 1);
    cursor.set(to);
    anchor = to;
    var changed = new HashSet<>(chosen.get());
    if (!changed.remove(order.get(to))) {
      changed.add(order.get(to));
    }
    choose(changed);
  }

  /** Chooses everything in the grid. */
  void all() {
    choose(new HashSet<>(order));
  }

  private void choose(Set<K> things) {
    chosen.set(Set.copyOf(things));
  }

  private K at(int place) {
    return place >= 0 && place < order.size() ? order.get(place) : null;
  }

  private OptionalInt position(K thing) {
    var place = thing == null ? null : positions.get(thing);
    return place == null ? OptionalInt.empty() : OptionalInt.of(place);
  }

  /** The things in the grid's order. */
  List<K> order() {
    return new ArrayList<>(order);
  }
}
