package org.framewright.job;

import java.time.Instant;
import java.util.Optional;
import org.framewright.shotlist.SetupState;

/**
 * Where a setup stands.
 *
 * @param since when it came into this state, by the job's time; empty if nothing was ever ticked
 * @param shotAt when it was ticked shot, while it is shot, or signed off after that; nothing where
 *     it was on set again since
 * @param signedOffBy who signed it off, while the sign-off holds
 * @param signedOffAt when, while the sign-off holds
 * @param reason why it is a pickup or was dropped
 * @param changedSinceSignOff whether it got a frame after its sign-off; known once the frames were
 *     counted
 */
public record SetupStatus(
    SetupState state,
    Optional<Instant> since,
    Optional<Instant> shotAt,
    Optional<String> signedOffBy,
    Optional<Instant> signedOffAt,
    Optional<String> reason,
    boolean changedSinceSignOff) {

  /** Nothing was ever ticked. */
  public static final SetupStatus TO_SHOOT =
      new SetupStatus(
          SetupState.TO_SHOOT,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          false);

  /** A status of which nobody knows when it was ticked shot. */
  public SetupStatus(
      SetupState state,
      Optional<Instant> since,
      Optional<String> signedOffBy,
      Optional<Instant> signedOffAt,
      Optional<String> reason,
      boolean changedSinceSignOff) {
    this(state, since, Optional.empty(), signedOffBy, signedOffAt, reason, changedSinceSignOff);
  }

  SetupStatus changed() {
    return new SetupStatus(state, since, shotAt, signedOffBy, signedOffAt, reason, true);
  }
}
