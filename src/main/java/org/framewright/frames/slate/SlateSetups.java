package org.framewright.frames.slate;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/** Finds the setups of a list that slates mean. Safe for several threads. */
public final class SlateSetups {
  private final Map<String, Optional<Setup>> plain = new HashMap<>();
  private final ShotList list;

  /** Made when the first slate asks for it: a list of thousands seldom has one. */
  private volatile Map<String, Optional<Setup>> hashed = Map.of();

  public SlateSetups(ShotList list) {
    this.list = list;
    for (var setup : list.setups()) {
      put(plain, Setup.canonicalKey(setup.code()), setup);
    }
  }

  /** Two setups for one slate: neither is meant. */
  private static void put(Map<String, Optional<Setup>> map, String key, Setup setup) {
    map.merge(key, Optional.of(setup), (_, _) -> Optional.empty());
  }

  /** The setup that a slate means, whatever job it is of; none if the list has none, or two. */
  public Optional<Setup> setup(Slate slate) {
    return (slate.isHashed() ? hashed() : plain).getOrDefault(slate.key(), Optional.empty());
  }

  private Map<String, Optional<Setup>> hashed() {
    var known = hashed;
    if (known.isEmpty() && !list.setups().isEmpty()) {
      var made = new HashMap<String, Optional<Setup>>();
      list.setups().forEach(setup -> put(made, Slate.hashed(setup.code()), setup));
      known = made;
      hashed = known;
    }
    return known;
  }
}
