package org.framewright.job;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
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

  private Snapshot<K, V> latest = new Snapshot<>(places, entries.snapshot());

  int size() {
    return entries.size();
  }

  void putIfAbsent(K key, V value) {
    if (places.putIfAbsent(key, entries.size()) == null) {
      entries.add(Map.entry(key, value));
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
  }

  Map<K, V> snapshot() {
    shared = Math.max(shared, entries.size());
    var now = entries.snapshot();
    if (latest.places != places || latest.entries != now) {
      latest = new Snapshot<>(places, now);
    }
    return latest;
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
