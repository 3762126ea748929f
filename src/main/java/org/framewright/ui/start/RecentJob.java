package org.framewright.ui.start;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.job.JobProgress;

/**
 * A job that was opened lately.
 *
 * @param folder its folder, as it was then
 * @param found what is known of it
 * @param picture its last frame, small; none while it is looked for, or where there is none
 */
record RecentJob(Path folder, Found found, Optional<BufferedImage> picture) {
  /** What is known of a job. */
  sealed interface Found {
    /** It is being looked at. */
    record NotYet() implements Found {}

    /** Its folder is not there: its drive is not plugged in, or it was moved. */
    record Gone() implements Found {}

    /** It could not be read. */
    record Unreadable(Problem problem) implements Found {}

    /** How far it is. */
    record Read(JobProgress progress) implements Found {}
  }

  static RecentJob at(Path folder) {
    return new RecentJob(folder, new Found.NotYet(), Optional.empty());
  }

  RecentJob with(Found now) {
    return new RecentJob(folder, now, picture);
  }

  RecentJob with(Optional<BufferedImage> now) {
    return new RecentJob(folder, found, now);
  }
}
