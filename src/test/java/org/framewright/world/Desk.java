package org.framewright.world;

import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import org.framewright.disk.Recording;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Station;

/** A computer with the program, which may end and begin again at any time. */
final class Desk {
  final Seat seat;
  final WorldClock clock;

  /** The frames that it takes for old: they lay there when it began. */
  final Set<Integer> present = new HashSet<>();

  private final Stage stage;
  Recording disk;
  Job job;

  Desk(Stage stage, Seat seat) {
    this.stage = stage;
    this.seat = seat;
    this.clock = new WorldClock(() -> stage.now);
  }

  String folder() {
    return seat == Seat.AWAY ? stage.office : stage.main;
  }

  Job open() throws IOException, JobException {
    if (job == null) {
      disk = stage.recording();
      job = Job.open(disk.root().resolve(folder()), clock, new Station(seat.station()));
    }
    return job;
  }

  void die() {
    job = null;
    disk = null;
    present.clear();
  }
}
