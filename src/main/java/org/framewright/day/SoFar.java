package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import java.util.SequencedMap;
import java.util.stream.Stream;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * What was shot and how long it took, and what is left.
 *
 * @param pace the times of what was shot
 * @param shot the same with the size of each
 * @param left in the order of the list
 * @param sizes how large setups are
 */
record SoFar(Pace pace, List<Workload.Shot> shot, List<Setup> left, Sizes sizes) {

  static SoFar of(Job job, JobState state, DayHours hours) {
    var left = new ArrayList<Setup>();
    var byCode = new HashMap<String, Setup>();
    for (var setup : job.shotList().setups()) {
      byCode.put(setup.code(), setup);
      if (!state.of(setup.code()).state().done()) {
        left.add(setup);
      }
    }
    var times = times(state, hours, DayHours.within(job.now()));
    var sizes =
        Sizes.of(
            Stream.concat(times.keySet().stream().map(byCode::get), left.stream())
                .filter(Objects::nonNull)
                .toList());
    var shot = new ArrayList<Workload.Shot>();
    times.forEach(
        (code, time) -> {
          var setup = byCode.get(code);
          if (setup != null) {
            shot.add(new Workload.Shot(sizes.of(setup), time));
          }
        });
    return new SoFar(
        new Pace(List.copyOf(times.values())), List.copyOf(shot), List.copyOf(left), sizes);
  }

  /** What was shot, with these setups as what is left. */
  Workload load(List<Setup> setups) {
    return new Workload(shot, setups.stream().map(sizes::of).toList());
  }

  /**
   * The working time of each setup that was shot: from the moment it came on set until the next one
   * did, or until it left when it was the day's last. A setup that was on set again has all of its
   * times.
   */
  static SequencedMap<String, Duration> times(JobState state, DayHours hours, Instant now) {
    var spans = state.spans();
    var bySetup = new LinkedHashMap<String, Duration>();
    for (int i = 0; i < spans.size(); i++) {
      var span = spans.get(i);
      var until = span.until().orElse(now);
      if (i + 1 < spans.size() && hours.isOneDay(span.from(), spans.get(i + 1).from())) {
        until = spans.get(i + 1).from();
      } else {
        var status = state.of(span.setup());
        var ticked = status.shotAt().or(status::since).orElse(until);
        until = ticked.isAfter(span.from()) && ticked.isBefore(until) ? ticked : until;
      }
      var time = hours.between(span.from(), until);
      // Kept in the order in which setups were last on set.
      var before = bySetup.remove(span.setup());
      bySetup.put(span.setup(), before == null ? time : before.plus(time));
    }
    bySetup
        .keySet()
        .removeIf(
            setup -> {
              var is = state.of(setup).state();
              return is != SetupState.SHOT && is != SetupState.SIGNED_OFF;
            });
    return bySetup;
  }
}
