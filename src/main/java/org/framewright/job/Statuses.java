package org.framewright.job;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Collections;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SequencedMap;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * The statuses of a list's setups by their codes, in the list's order. One with some of them
 * changed shares all else, so that a tick in a list of many thousand lines copies one array.
 */
final class Statuses extends AbstractMap<String, SetupStatus>
    implements SequencedMap<String, SetupStatus> {
  private final ListIndex index;
  private final SetupStatus[] statuses;

  private Statuses(ListIndex index, SetupStatus[] statuses) {
    this.index = index;
    this.statuses = statuses;
  }

  /** The statuses of all setups of a list, in its order. */
  static Statuses of(ListIndex index, SetupStatus[] statuses) {
    return new Statuses(index, statuses.clone());
  }

  /** These with others in some places of the list. */
  Statuses with(Map<Integer, SetupStatus> changes) {
    if (changes.entrySet().stream().allMatch(one -> statuses[one.getKey()].equals(one.getValue()))) {
      return this;
    }
    var next = statuses.clone();
    changes.forEach((place, status) -> next[place] = status);
    return new Statuses(index, next);
  }

  /** A map of statuses with some codes' statuses changed; codes that it has not are left out. */
  static SequencedMap<String, SetupStatus> changed(
      SequencedMap<String, SetupStatus> all, Set<String> codes, UnaryOperator<SetupStatus> change) {
    if (codes.isEmpty()) {
      return all;
    }
    if (all instanceof Statuses statuses) {
      var changes = new LinkedHashMap<Integer, SetupStatus>();
      for (var code : codes) {
        int place = statuses.index.placeOfCode(code);
        if (place >= 0) {
          changes.put(place, change.apply(statuses.statuses[place]));
        }
      }
      return statuses.with(changes);
    }
    var copy = new LinkedHashMap<>(all);
    codes.forEach(code -> copy.computeIfPresent(code, (_, status) -> change.apply(status)));
    return Collections.unmodifiableSequencedMap(copy);
  }

  @Override
  public SetupStatus get(Object code) {
    int place = code instanceof String text ? index.placeOfCode(text) : -1;
    return place < 0 ? null : statuses[place];
  }

  @Override
  public boolean containsKey(Object code) {
    return get(code) != null;
  }

  @Override
  public int size() {
    return statuses.length;
  }

  @Override
  public Set<Map.Entry<String, SetupStatus>> entrySet() {
    return new AbstractSet<>() {
      @Override
      public Iterator<Map.Entry<String, SetupStatus>> iterator() {
        return IntStream.range(0, statuses.length)
            .mapToObj(i -> Map.entry(index.setups().get(i).code(), statuses[i]))
            .iterator();
      }

      @Override
      public int size() {
        return statuses.length;
      }
    };
  }

  @Override
  public SequencedMap<String, SetupStatus> reversed() {
    return Collections.unmodifiableSequencedMap(new LinkedHashMap<>(this)).reversed();
  }
}
