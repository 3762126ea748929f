package org.framewright.job;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/** A shot list, in which setups are found by what names can tell apart. */
final class ListIndex {
  private final ShotList list;
  private final Map<String, Integer> places;

  ListIndex(ShotList list) {
    this.list = list;
    this.places = HashMap.newHashMap(list.setups().size());
    for (int i = 0; i < list.setups().size(); i++) {
      places.put(Setup.canonicalKey(list.setups().get(i).code()), i);
    }
  }

  ShotList list() {
    return list;
  }

  List<Setup> setups() {
    return list.setups();
  }

  /** The place of the setup with this canonical key; -1 if there is none. */
  int place(String key) {
    return places.getOrDefault(key, -1);
  }

  /** The code that the list has for this canonical key. */
  Optional<String> code(String key) {
    int place = place(key);
    return place < 0 ? Optional.empty() : Optional.of(setups().get(place).code());
  }

  /** The setup that a person means by this code. */
  Optional<Setup> setup(String code) {
    int place = place(Setup.canonicalKey(code));
    return place < 0 ? Optional.empty() : Optional.of(setups().get(place));
  }

  /** The place of the setup of exactly this code; -1 if there is none. */
  int placeOfCode(String code) {
    int place = place(Setup.canonicalKey(code));
    return place >= 0 && setups().get(place).code().equals(code) ? place : -1;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ListIndex index && index.list.equals(list);
  }

  @Override
  public int hashCode() {
    return list.hashCode();
  }
}
