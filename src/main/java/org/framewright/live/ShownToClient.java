package org.framewright.live;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.frames.SetupTally;
import org.framewright.job.OnSet;
import org.framewright.shotlist.SetupState;

/**
 * What the client reads, on whatever screen.
 *
 * @param code the setup on set, else the one that was ticked last; empty before the first
 * @param title what it is
 * @param state where it stands
 * @param agreedBy who agreed to it
 * @param frames how many it has
 * @param views its views with their frames
 * @param agreed setups agreed to
 * @param setups setups wanted
 */
public record ShownToClient(
    String code,
    String title,
    SetupState state,
    Optional<String> agreedBy,
    int frames,
    List<ViewCount> views,
    int agreed,
    int setups) {
  public ShownToClient {
    views = List.copyOf(views);
  }

  /**
   * What is shown of a job.
   *
   * @param asked the setup that the client is asked about, which stays until they answered
   */
  public static ShownToClient of(JobView now, Optional<String> asked) {
    var states = now.state().setups();
    var code =
        asked
            .or(() -> now.state().onSet().map(OnSet::setup))
            .or(() -> lastTicked(now))
            .filter(one -> now.list().setup(one).isPresent())
            .orElse("");
    var setup = now.list().setup(code);
    var status = now.state().of(code);
    var counted = Optional.ofNullable(now.tally().bySetup().get(code));
    var inFront = now.state().onSet().filter(set -> set.setup().equals(code)).flatMap(OnSet::view);
    return new ShownToClient(
        code,
        setup.map(one -> one.title()).orElse(""),
        status.state(),
        status.signedOffBy(),
        counted.map(SetupTally::frames).orElse(0),
        setup.map(one -> ViewCount.of(one, counted, inFront)).orElse(List.of()),
        count(now, SetupState.SIGNED_OFF),
        states.size() - count(now, SetupState.DROPPED));
  }

  /** Whether there is something to agree to. */
  public boolean canAgree() {
    return !code.isEmpty() && state != SetupState.SIGNED_OFF && state != SetupState.DROPPED;
  }

  private static int count(JobView now, SetupState state) {
    return (int) now.state().setups().values().stream().filter(one -> one.state() == state).count();
  }

  private static Optional<String> lastTicked(JobView now) {
    return now.state().setups().entrySet().stream()
        .filter(entry -> entry.getValue().since().isPresent())
        .filter(
            entry ->
                entry.getValue().state() == SetupState.SHOT
                    || entry.getValue().state() == SetupState.SIGNED_OFF)
        .max(Comparator.comparing(entry -> entry.getValue().since().orElseThrow()))
        .map(Map.Entry::getKey);
  }
}
