package org.framewright.handoff;

import java.util.HashSet;
import java.util.List;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;

/**
 * Which frames are to be handed off, before anybody looks whether they can be.
 *
 * @param chosenBy how they were chosen, such as {@code rated 4 or higher}
 * @param withheld those that cannot be asked for
 */
record Selection(String chosenBy, List<Frame> frames, List<Withheld> withheld) {

  Selection {
    frames = List.copyOf(frames);
    withheld = List.copyOf(withheld);
  }

  static Selection rated(Job job, FrameScan scan, int atLeast) {
    var state = job.state();
    return new Selection(
        "rated " + atLeast + " or higher",
        scan.distinct().stream().filter(frame -> state.rating(frame).orElse(0) >= atLeast).toList(),
        List.of());
  }

  static Selection selects(Job job, FrameScan scan) {
    // Two copies of one frame are one select.
    var seen = new HashSet<FrameId>();
    return new Selection(
        "chosen in the job",
        job.selects(scan).stream().filter(frame -> seen.add(frame.id())).toList(),
        List.of());
  }

  /** The frames that a client's list names without a doubt. */
  static Selection named(ClientNames names) {
    return new Selection("named in " + names.file(), names.frames(), List.of());
  }
}
