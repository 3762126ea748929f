package org.framewright.studio;

import java.io.IOException;
import org.framewright.frames.FrameScan;
import org.framewright.job.Standing;

/** What is known of a job's frames. */
interface Sight {
  /**
   * The frames of a job, and how it stands with them.
   *
   * @param scan the frames
   * @param standing their counts, and the state of each setup
   */
  record Seen(FrameScan scan, Standing standing) {}

  /** Another number where there may be something else to see; costs nothing. */
  long revision();

  /** What is to be seen now; it may take as long as looking at each file. */
  Seen now() throws IOException;
}
