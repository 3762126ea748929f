package org.framewright.mhl;

import java.nio.ByteBuffer;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/** Hashes of several kinds, made of one file in one pass. */
public final class RunningHashes {
  private final Map<HashKind, RunningHash> running = new EnumMap<>(HashKind.class);

  /** Some that nothing was given to. */
  public RunningHashes(Set<HashKind> kinds) {
    kinds.forEach(kind -> running.put(kind, kind.begin()));
  }

  /** Adds a piece, which stays as it is. */
  public void update(ByteBuffer piece) {
    running.values().forEach(one -> one.update(piece.duplicate()));
  }

  /** What they came to, as lists have it; to be asked once. */
  public Map<HashKind, String> values() {
    var values = new EnumMap<HashKind, String>(HashKind.class);
    running.forEach((kind, hash) -> values.put(kind, kind.text(hash.value())));
    return values;
  }
}
