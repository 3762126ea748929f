package org.framewright.cli;

import java.io.PrintWriter;
import org.framewright.base.Progress;

/**
 * Tells now and then how many are done, and stops when it is interrupted.
 *
 * @param every of how many done one is told
 * @param what what they are, such as {@code pictures}
 */
record CountProgress(PrintWriter err, Interruption interruption, int every, String what)
    implements Progress {
  @Override
  public void step(int done, int total) {
    if (done % every == 0) {
      err.println(done + " of " + total + " " + what);
      err.flush();
    }
  }

  @Override
  public boolean cancelled() {
    return interruption.cancelled();
  }
}
