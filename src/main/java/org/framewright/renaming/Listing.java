package org.framewright.renaming;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.framewright.base.NameKey;

/**
 * The names in a folder, found by their {@link NameKey}. Chains of indices instead of a map of
 * objects: a folder may hold a hundred thousand names, and every collection of garbage in the midst
 * of a plan would follow each entry of a map.
 */
final class Listing {
  /** No name. */
  static final int NONE = -1;

  private final List<Path> names;
  private final int[] hashes;

  /** By the last bits of the hash, the name that a chain begins with. */
  private final int[] heads;

  /** The name that follows in the chain. */
  private final int[] next;

  Listing(List<Path> names) {
    this.names = names;
    this.hashes = new int[names.size()];
    this.next = new int[names.size()];
    this.heads = new int[Integer.highestOneBit(Math.max(1, names.size())) * 2];
    Arrays.fill(heads, NONE);
    for (int i = 0; i < hashes.length; i++) {
      hashes[i] = hash(key(names.get(i)));
      next[i] = heads[chain(hashes[i])];
      heads[chain(hashes[i])] = i;
    }
  }

  int size() {
    return hashes.length;
  }

  Path name(int index) {
    return names.get(index);
  }

  /** A name that is one with this name on some disk. */
  int alike(Path name) {
    var key = key(name);
    int hash = hash(key);
    return along(heads[chain(hash)], hash, key);
  }

  /** The next name that is one with that of this index on some disk. */
  int alikeAfter(int index) {
    return along(next[index], hashes[index], key(names.get(index)));
  }

  /** The name with exactly this spelling. */
  int exactly(Path name) {
    int hash = hash(key(name));
    int index = heads[chain(hash)];
    while (index != NONE && !(hashes[index] == hash && PathBytes.same(names.get(index), name))) {
      index = next[index];
    }
    return index;
  }

  private int along(int start, int hash, String key) {
    int index = start;
    while (index != NONE && !(hashes[index] == hash && key(names.get(index)).equals(key))) {
      index = next[index];
    }
    return index;
  }

  private int chain(int hash) {
    return hash & (heads.length - 1);
  }

  private static String key(Path name) {
    return NameKey.of(name.toString());
  }

  /** The first bits of a text's hash depend on all of it, the last ones mostly on its end. */
  private static int hash(String key) {
    int hash = key.hashCode();
    return hash ^ (hash >>> 16);
  }
}
