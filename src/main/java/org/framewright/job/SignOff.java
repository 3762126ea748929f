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
 *     taken
 * @param later how many it got since
 * @param proof the part of the log that ends with it; none where that is not there any more
 */
public record SignOff(
    Setup setup, String by, Instant at, List<Frame> frames, int later, Optional<LogProof> proof) {
  public SignOff {
    frames = List.copyOf(frames);
  }
}
