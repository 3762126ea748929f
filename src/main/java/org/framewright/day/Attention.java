package org.framewright.day;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.framewright.frames.CameraClock;
import org.framewright.frames.ImplausibleClock;
import org.framewright.frames.Tally;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** Something that a person should look at. */
public sealed interface Attention {
  /** A setup is to be shot again. */
  record Pickup(Setup setup, Optional<String> reason) implements Attention {}

  /** A setup was dropped. */
  record Dropped(Setup setup, Optional<String> reason) implements Attention {}

  /** A setup got frames after its sign-off. */
  record Changed(Setup setup) implements Attention {}

  /**
   * A setup that was shot has no frame of some wanted views.
   *
   * @param views at least one
   */
  record ViewsMissing(Setup setup, List<View> views) implements Attention {
    public ViewsMissing {
      views = List.copyOf(views);
    }
  }

  /** Frames belong to no setup yet. */
  record Unassigned(int frames) implements Attention {}

  /** Frames are not complete. */
  record Incomplete(int frames) implements Attention {}

  /** The clock of a body is off. */
  record ClockOff(CameraClock clock) implements Attention {}

  /** The times of a body's frames cannot be right. */
  record Implausible(ImplausibleClock clock) implements Attention {}

  /** All that there is: setups in the order of the list, then frames, then clocks. */
  static List<Attention> of(ShotList list, JobState state, Tally tally) {
    var attention = new ArrayList<Attention>();
    for (var setup : list.setups()) {
      var status = state.of(setup.code());
      switch (status.state()) {
        case PICKUP -> attention.add(new Pickup(setup, status.reason()));
        case DROPPED -> attention.add(new Dropped(setup, status.reason()));
        case SHOT, SIGNED_OFF -> {
          if (status.changedSinceSignOff()) {
            attention.add(new Changed(setup));
          }
          var missing = missing(setup, tally);
          if (!missing.isEmpty()) {
            attention.add(new ViewsMissing(setup, missing));
          }
        }
        case TO_SHOOT, ON_SET -> {}
      }
    }
    if (!tally.unassigned().isEmpty()) {
      attention.add(new Unassigned(tally.unassigned().size()));
    }
    if (!tally.incomplete().isEmpty()) {
      attention.add(new Incomplete(tally.incomplete().size()));
    }
    tally.cameras().stream().filter(CameraClock::isOff).map(ClockOff::new).forEach(attention::add);
    tally.implausible().stream().map(Implausible::new).forEach(attention::add);
    return List.copyOf(attention);
  }

  /** The wanted views without a frame; nothing is said where frames have no views at all. */
  private static List<View> missing(Setup setup, Tally tally) {
    var counted = tally.bySetup().get(setup.code());
    if (counted == null) {
      return List.of();
    }
    var have = new TreeMap<String, Integer>(String.CASE_INSENSITIVE_ORDER);
    have.putAll(counted.byView());
    if (have.keySet().stream().allMatch(String::isEmpty)) {
      return List.of();
    }
    return setup.views().stream().filter(view -> have.getOrDefault(view.code(), 0) == 0).toList();
  }
}
