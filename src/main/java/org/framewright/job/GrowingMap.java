package org.framewright.job;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A map in which a key keeps its first value, of which snapshots cost nothing: they share its
 * entries and know how many of them are theirs. For one thread; snapshots are for all.
 */
final class GrowingMap<K, V> {
  private ConcurrentHashMap<K, Integer> places = new ConcurrentHashMap<>();
  private final GrowingList<Map.Entry<K, V>> entries = new GrowingList<>();

  /** So many entries a snapshot may show. */
  private int shared;

  /** The last snapshot, while nothing has changed since. */
  private Optional<Map<K, V>> latest = Optional.empty();

  int size() {
    return entries.size();
  }

  Optional<V> get(K key) {
    return Optional.ofNullable(places.get(key)).map(place -> entries.get(place).getValue());
  }

  void putIfAbsent(K key, V value) {
    if (places.putIfAbsent(key, entries.size()) == null) {
      entries.add(Map.entry(key, value));
      latest = Optional.empty();
    }
  }

  /** Forgets what came from this place on; snapshots keep it. */
  void cut(int size) {
    if (size < shared) {
      places = new ConcurrentHashMap<>(places);
      shared = 0;
    }
    for (int i = entries.size() - 1; i >= size; i--) {
      places.remove(entries.get(i).getKey());
    }
    entries.cut(size);
    latest = Optional.empty();
  }

  Map<K, V> snapshot() {
    shared = Math.max(shared, entries.size());
    if (latest.isEmpty()) {
      latest = Optional.of(new Snapshot<>(places, entries.snapshot()));
    }
    return latest.get();
  }

  private static final class Snapshot<K, V> extends AbstractMap<K, V> {
    private final Map<K, Integer> places;
    private final List<Map.Entry<K, V>> entries;

    Snapshot(Map<K, Integer> places, List<Map.Entry<K, V>> entries) {
      this.places = places;
      this.entries = entries;
    }

    @Override
    public V get(Object key) {
      var place = places.get(key);
      return place != null && place < entries.size() ? entries.get(place).getValue() : null;
    }

    @Override
    public boolean containsKey(Object key) {
      return get(key) != null;
    }

    @Override
    public Set<Map.Entry<K, V>> entrySet() {
      return new AbstractSet<>() {
        @Override
        public Iterator<Map.Entry<K, V>> iterator() {
          return Collections.unmodifiableList(entries).iterator();
        }

        @Override
        public int size() {
          return entries.size();
        }
      };
    }
  }
}
