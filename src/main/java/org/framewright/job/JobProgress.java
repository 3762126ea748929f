package org.framewright.job;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.framewright.shotlist.SetupState;

/**
 * How far a job is, by its list and its ticks alone: no frame is looked at.
 *
 * @param name the job's name
 * @param states where each setup of the list stands, in running order
 * @param last when somebody did something to the job last, by its log; none where the log is empty
 * @param frames where its frames arrive, absolute
 */
public record JobProgress(
    String name, List<SetupState> states, Optional<Instant> last, Path frames) {
  /** Nobody is to write as this station. */
  private static final Station READER = new Station("reader");

  public JobProgress {
    states = List.copyOf(states);
  }

  /** How far an open job is, as its log was read last. */
  public static JobProgress of(Job job) {
    var state = job.state();
    return new JobProgress(
        job.name(),
        job.shotList().setups().stream().map(setup -> state.of(setup.code()).state()).toList(),
        job.latest(),
        job.framesFolder());
  }

  /** Reads how far the job in a folder is. Nothing is written or locked. */
  public static JobProgress read(Path folder, Clock clock) throws IOException, JobException {
    return of(Job.open(folder, clock, READER));
  }

  /** How many setups are signed off. */
  public int signedOff() {
    return (int) states.stream().filter(state -> state == SetupState.SIGNED_OFF).count();
  }
}
