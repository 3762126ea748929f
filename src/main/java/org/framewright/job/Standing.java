package org.framewright.job;

import java.time.ZoneId;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.framewright.frames.Attribution;
import org.framewright.frames.FrameScan;
import org.framewright.frames.PlausibleTimes;
import org.framewright.frames.Tally;

/**
 * Where a job stands: its frames counted, and its setups in the light of them.
 *
 * @param tally the frames of a scan, counted by setup and view
 * @param state the state of the log, in which a setup that got a frame after its sign-off says so
 */
public record Standing(Tally tally, JobState state) {

  /** What the log, the names of frames and a scan say together; nothing else counts. */
  static Standing of(
      JobState state, FrameScan scan, FrameNaming naming, ZoneId zone, PlausibleTimes plausible) {
    var tally = attribution(state, scan, naming, zone).tally(plausible);
    return new Standing(tally, state.changedSinceSignOff(changed(state, scan, tally, zone)));
  }

  static Attribution attribution(JobState state, FrameScan scan, FrameNaming naming, ZoneId zone) {
    return Attribution.of(
        scan.frames(),
        state.arrivals(),
        state.spans(),
        state.moves(),
        naming::place,
        ViewCodes.onlyOnes(naming.list()),
        zone,
        state.slates().among(naming.slates()));
  }

  /** The setups that got a frame after their sign-off. */
  private static Set<String> changed(JobState state, FrameScan scan, Tally tally, ZoneId zone) {
    var since = new SinceSignOff(state, new FrameTimes(zone, state.arrivals(), tally.cameras()));
    var changed = new HashSet<String>();
    for (var frame : scan.frames()) {
      var place = Optional.ofNullable(tally.places().get(frame.id()));
      var signedOff = place.flatMap(at -> state.of(at.setup()).signedOffAt());
      if (signedOff.isPresent() && since.came(frame, place.get(), signedOff.get())) {
        changed.add(place.get().setup());
      }
    }
    return changed;
  }

  /**
   * The counts of before with the state of now, until the frames are counted anew: a setup that
   * changed since its sign-off still says so while that sign-off holds.
   */
  public Standing with(JobState now) {
    var changed =
        tally.bySetup().keySet().stream()
            .filter(setup -> state.of(setup).changedSinceSignOff())
            .filter(setup -> now.of(setup).signedOffAt().equals(state.of(setup).signedOffAt()))
            .collect(Collectors.toSet());
    return new Standing(tally, now.changedSinceSignOff(changed));
  }
}
