package org.framewright.shotlist;

import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The setups of a job, in the order in which they are planned.
 *
 * @param setups no two of which share a code that only differs in case or leading zeros
 */
public record ShotList(List<Setup> setups) {

  public ShotList {
    setups = List.copyOf(setups);
    var seen = new HashMap<String, String>();
    for (var setup : setups) {
      var other = seen.put(Setup.canonicalKey(setup.code()), setup.code());
      if (other != null) {
        throw new IllegalArgumentException(
            "setups " + other + " and " + setup.code() + " cannot be told apart");
      }
    }
  }

  public static ShotList empty() {
    return new ShotList(List.of());
  }

  /**
   * The setup that a person means: the one of exactly this code, else the one whose code differs
   * only in case and leading zeros.
   */
  public Optional<Setup> setup(String code) {
    var wanted = Setup.canonicalKey(code);
    return setups.stream()
        .filter(setup -> Setup.canonicalKey(setup.code()).equals(wanted))
        .findFirst();
  }

  /** The codes, in order. */
  public List<String> codes() {
    return setups.stream().map(Setup::code).collect(Collectors.toUnmodifiableList());
  }
}
