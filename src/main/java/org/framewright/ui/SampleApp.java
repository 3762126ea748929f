package org.framewright.ui;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import org.framewright.job.JobException;
import org.framewright.sample.SampleFiles;
import org.framewright.sample.SampleJobs;

/** Opens the app on the sample job, in the middle of its second day. */
final class SampleApp {
  private SampleApp() {}

  /** {@code SampleApp [FOLDER]}: where the job is made; a temporary folder if none is named. */
  public static void main(String[] args) throws IOException, JobException {
    var into = args.length > 0 ? Path.of(args[0]) : Files.createTempDirectory("framewright-sample");
    Launch.open(
        Optional.of(
            SampleJobs.inTheMiddle(SampleFiles.find(), into, InstantSource.system().instant())));
  }
}
