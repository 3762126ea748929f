package org.framewright.day;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;

/**
 * How long each setup that is left will take if it goes on as it did: by how much of it there is,
 * as far as the list tells.
 *
 * @param bySetup by its code; empty where it is too early to tell
 */
public record SetupTimes(Map<String, Duration> bySetup) {
  public SetupTimes {
    bySetup = Map.copyOf(bySetup);
  }

  /** Those of a job now. */
  public static SetupTimes of(Job job, JobState state, DayHours hours) {
    var progress = SoFar.of(job, state, hours);
    var load = progress.load(progress.left());
    if (progress.pace().tooEarly() || load.shot().isEmpty()) {
      return new SetupTimes(Map.of());
    }
    double unit =
        new Workload(load.shot(), List.of(new Workload.Item(1, Optional.empty())))
            .estimate()
            .work();
    var times = new HashMap<String, Duration>();
    progress
        .left()
        .forEach(
            setup ->
                times.put(setup.code(), Pace.minutes(unit * progress.sizes().of(setup).size())));
    return new SetupTimes(times);
  }

  /** That of a setup; none where nobody can say. */
  public Optional<Duration> of(Setup setup) {
    return Optional.ofNullable(bySetup.get(setup.code()));
  }
}
