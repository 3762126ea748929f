package org.framewright.job;

import java.time.Instant;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.UUID;
import org.framewright.shotlist.Setup;

/**
 * The setups that went from this job to another one and came from one, as far as the job's own log
 * tells.
 *
 * @param given those that are not shot here any more, in the order in which they were given
 * @param came where setups of the list came from, by their codes
 * @param taken the moves by which a setup came
 * @param ended the moves away from here whose end is known
 */
public record SetupMoves(
    List<Given> given, SequencedMap<String, Came> came, Set<UUID> taken, Set<UUID> ended) {
  public static final SetupMoves NONE =
      new SetupMoves(List.of(), new LinkedHashMap<>(), Set.of(), Set.of());

  /**
   * A setup that was given away.
   *
   * @param move what tells this move from every other one
   * @param what the setup as it was given
   * @param to the job that it goes to
   * @param by who asked for it; empty where nobody is named
   * @param at when it was given, by the job's time
   * @param arrived whether the other job has it; it is on its way until then
   * @param workedOn whether it is on set here or was ticked here nevertheless, by somebody who did
   *     not know; it is in the list then
   */
  public record Given(
      UUID move,
      MovedSetup what,
      OtherJob to,
      String by,
      Instant at,
      boolean arrived,
      boolean workedOn) {
    public Setup setup() {
      return what.setup();
    }
  }

  /**
   * Where a setup came from.
   *
   * @param was its code there
   * @param codes its code in each job that it was in before
   * @param at when it came, by the job's time
   */
  public record Came(
      UUID move, OtherJob from, String was, SequencedMap<UUID, String> codes, Instant at) {}

  public SetupMoves {
    given = List.copyOf(given);
    came = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(came));
    taken = Collections.unmodifiableSet(new HashSet<>(taken));
    ended = Collections.unmodifiableSet(new HashSet<>(ended));
  }

  /** The setup that was given away and has this code, whatever its case and leading zeros. */
  public Optional<Given> given(String code) {
    var key = Setup.canonicalKey(code);
    return given.stream()
        .filter(one -> Setup.canonicalKey(one.setup().code()).equals(key))
        // Where two stations gave it away at the same time, one of them lost.
        .max(Comparator.comparing(Given::arrived));
  }

  /** What a move took away from here and did not bring back. */
  public Optional<Given> given(UUID move) {
    return given.stream().filter(one -> one.move().equals(move)).findFirst();
  }

  /** Where a setup of the list came from. */
  public Optional<Came> came(String code) {
    return Optional.ofNullable(came.get(code));
  }

  /** Whether the setup of this code is to be shot elsewhere. */
  boolean isAway(Setup setup) {
    return !given.isEmpty() && given(setup.code()).isPresent();
  }
}
