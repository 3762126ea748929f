package org.framewright.job;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameMove;
import org.framewright.frames.OnSetSpan;

/**
 * The state that the events of a job make. All times are the job's time.
 *
 * @param setups every setup of the list by its code, in the list's order
 * @param spans when each setup was before the camera; a setup that was ticked shot stays there
 *     until the next one comes, an hour at most
 * @param moves frames that people moved, in the order in which they did
 * @param arrivals when each frame was seen to arrive
 * @param selects the frames that people chose
 * @param onSet the setup that is on set now
 * @param pickups the codes of the setups to be shot again, in the order in which they were ticked
 */
public record JobState(
    SequencedMap<String, SetupStatus> setups,
    List<OnSetSpan> spans,
    List<FrameMove> moves,
    Map<FrameId, Instant> arrivals,
    Set<FrameId> selects,
    Optional<OnSet> onSet,
    List<String> pickups) {

  /** The status of a setup; that of one never ticked where the code is unknown. */
  public SetupStatus of(String setup) {
    return setups.getOrDefault(setup, SetupStatus.TO_SHOOT);
  }

  /** This state, in which some setups got frames after their sign-off. */
  JobState changedSinceSignOff(Set<String> codes) {
    var marked =
        Statuses.changed(
            setups,
            codes,
            status -> status.signedOffAt().isPresent() ? status.changed() : status);
    return new JobState(marked, spans, moves, arrivals, selects, onSet, pickups);
  }
}
