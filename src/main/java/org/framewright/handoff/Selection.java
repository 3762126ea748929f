package org.framewright.handoff;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.Tally;
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

  /** The frames with this label in a sidecar or in the picture, letter by letter. */
  static Selection labelled(FrameScan scan, String label) {
    return new Selection(
        "labelled “" + label + "”",
        scan.distinct().stream()
            .filter(frame -> frame.capture().label().filter(label::equals).isPresent())
            .toList(),
        List.of());
  }

  /** A slate is no frame of anything, and goes only where slates are asked for. */
  static Selection every(FrameScan scan, Tally tally) {
    var slates =
        tally.slates().frames().stream().map(one -> one.frame().id()).collect(Collectors.toSet());
    return new Selection(
        "every frame",
        scan.distinct().stream().filter(frame -> !slates.contains(frame.id())).toList(),
        List.of());
  }

  /** The frames that a client's list names without a doubt. */
  static Selection named(ClientNames names) {
    return new Selection("named in " + names.file(), names.frames(), List.of());
  }

  private static Optional<String> setup(Frame frame, Extent extent, Tally tally) {
    return tally
        .place(frame)
        .map(Place::setup)
        .or(
            () ->
                tally
                    .slates()
                    .of(frame)
                    .filter(_ -> extent.slates())
                    .map(one -> one.slate().says().code()));
  }

  /**
   * The frames of some setups, with some of their pictures; one that lacks such a picture stays.
   */
  Selection within(Extent extent, Job job, Tally tally) {
    var left = new ArrayList<Frame>();
    var without = new ArrayList<>(withheld);
    var setups = Set.copyOf(extent.setups());
    for (var frame : frames) {
      if (!setups.isEmpty() && setup(frame, extent, tally).filter(setups::contains).isEmpty()) {
        continue;
      }
      var part = extent.pictures().of(frame);
      if (part.isPresent()) {
        left.add(part.get());
      } else {
        without.add(
            new Withheld(
                FramePaths.original(job, frame),
                extent.pictures().missing(),
                "Hand off all its pictures, or take it out of what is chosen."));
      }
    }
    return new Selection(extent.after(chosenBy), left, without);
  }
}
