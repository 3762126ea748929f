package org.framewright.sample;

import java.time.Instant;
import java.util.Optional;
import org.framewright.base.Progress;
import org.framewright.copies.DiskSpeed;
import org.framewright.copies.device.Volumes;
import org.framewright.job.Job;
import org.framewright.ready.Facts;
import org.framewright.ready.Surroundings;

/** The computer of the invented shoot, which runs on mains and whose disk nobody measures. */
record SampleSurroundings(SampleClock clock) implements Surroundings {
  @Override
  public Instant now() {
    return clock.instant();
  }

  @Override
  public Facts.Power power() {
    return new Facts.Power.OnMains();
  }

  @Override
  public Volumes volumes() {
    return Volumes.ofThisSystem();
  }

  @Override
  public Optional<DiskSpeed> speed(Job job, Progress progress) {
    return Optional.empty();
  }
}
