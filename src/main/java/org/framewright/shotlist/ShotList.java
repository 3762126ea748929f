package org.framewright.shotlist;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The setups of a job, in the order in which they are planned. Finding one takes the same time in a
 * long list as in a short one.
 */
public final class ShotList {
  /** A number of a length that is safe to count with stands at the end. */
  private static final Pattern COUNTED = Pattern.compile("(.*?)(\\d{1,9})", Pattern.DOTALL);

  private static final ShotList EMPTY = new ShotList(List.of());

  private final List<Setup> setups;
  private final List<String> codes;
  private final Map<String, Setup> byKey;

  /**
   * A list of these setups.
   *
   * @throws IllegalArgumentException if two of them share a code that only differs in case or
   *     leading zeros
   */
  public ShotList(List<Setup> setups) {
    this.setups = List.copyOf(setups);
    this.codes = this.setups.stream().map(Setup::code).toList();
    this.byKey = HashMap.newHashMap(setups.size());
    for (var setup : this.setups) {
      var other = byKey.put(Setup.canonicalKey(setup.code()), setup);
      if (other != null) {
        throw new IllegalArgumentException(
            "setups " + other.code() + " and " + setup.code() + " look the same");
      }
    }
  }

  public static ShotList empty() {
    return EMPTY;
  }

  public List<Setup> setups() {
    return setups;
  }

  /**
   * The setup that a person means: the one of exactly this code, else the one whose code differs
   * only in case and leading zeros.
   */
  public Optional<Setup> setup(String code) {
    return Optional.ofNullable(byKey.get(Setup.canonicalKey(code)));
  }

  /** The codes, in order. */
  public List<String> codes() {
    return codes;
  }

  /**
   * A code for one more setup, which counts on from the last one's: behind {@code 012} comes {@code
   * 013}, behind {@code A-9} comes {@code A-10}; {@code 001} where no code has a number at its end.
   * It is none that the list has.
   */
  public String nextCode() {
    return nextCode(_ -> false);
  }

  /**
   * The same.
   *
   * @param isTaken whether a code is not to be used, though the list has it not
   */
  public String nextCode(Predicate<String> isTaken) {
    var last = codes.reversed().stream().map(COUNTED::matcher).filter(Matcher::matches).findFirst();
    var before = last.map(match -> match.group(1)).orElse("");
    var digits = last.map(match -> match.group(2)).orElse("000");
    for (var number = Integer.parseInt(digits) + 1; ; number++) {
      var code = before + ("%0" + digits.length() + "d").formatted(number);
      if (setup(code).isEmpty() && !isTaken.test(code)) {
        return code;
      }
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ShotList list && list.setups.equals(setups);
  }

  @Override
  public int hashCode() {
    return setups.hashCode();
  }

  @Override
  public String toString() {
    return "ShotList" + setups;
  }
}
