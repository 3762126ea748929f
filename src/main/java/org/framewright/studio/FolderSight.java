package org.framewright.studio;

import java.io.IOException;
import org.framewright.job.Job;

/** The frames of a job that nobody follows: looked at whenever it is asked for. */
record FolderSight(Job job) implements Sight {
  @Override
  public long revision() {
    return job.events();
  }

  @Override
  public Seen now() throws IOException {
    var scan = job.scan();
    return new Seen(scan, job.standing(scan));
  }
}
