package org.framewright.job;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.framewright.frames.Frame;
import org.framewright.shotlist.Setup;

/**
 * A sign-off that holds.
 *
 * @param setup what was approved
 * @param by who approved it
 * @param at when, by the job's time
 * @param frames the complete pictures that the setup had by then, in the order in which they were
 *     taken; those that were moved elsewhere since with them
 * @param later how many it got since
 * @param movedAway how many of the frames were moved to another setup since
 * @param timeless of how many nobody knows whether they were there by then
 * @param notThere how many had arrived for it by then, as the log knows, and are not in the job, or
 *     not as they were
 * @param proof the part of the log that ends with it; none where that is not there any more
 */
public record SignOff(
    Setup setup,
    String by,
    Instant at,
    List<Frame> frames,
    int later,
    int movedAway,
    int timeless,
    int notThere,
    Optional<LogProof> proof) {
  public SignOff {
    frames = List.copyOf(frames);
  }
}
