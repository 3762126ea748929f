package org.framewright.copies;

import java.io.IOException;
import java.util.List;
import org.framewright.job.Job;

/** Copies of a job that were begun and that nobody ends any more. */
public final class InterruptedCopies {
  private InterruptedCopies() {}

  /** The folders that they were for, as they were given; nothing is written. */
  public static List<String> of(Job job) throws IOException {
    return CopyRuns.of(job).interrupted();
  }
}
