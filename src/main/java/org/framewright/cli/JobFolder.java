package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/** Opens job folders for commands. */
final class JobFolder {
  private JobFolder() {}

  /** Opens a job and prints what a person should know of its folder. */
  static Job open(Path folder, Output output) throws IOException, JobException {
    var job = Job.open(folder, Clock.system(ZoneId.systemDefault()));
    job.warnings().forEach(warning -> output.err().println("Note: " + warning));
    return job;
  }
}
