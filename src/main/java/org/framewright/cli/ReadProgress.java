package org.framewright.cli;

import java.io.PrintWriter;
import org.framewright.base.Progress;

/** Tells at every tenth how much was read, and stops when it is interrupted. */
final class ReadProgress implements Progress {
  private final PrintWriter err;
  private final Interruption interruption;
  private int told;

  ReadProgress(PrintWriter err, Interruption interruption) {
    this.err = err;
    this.interruption = interruption;
  }

  @Override
  public void step(int done, int total) {
    int percent = (int) (100L * done / Math.max(1, total));
    if (percent / 10 > told / 10) {
      told = percent;
      err.println(done + " of " + total + " MiB read");
      err.flush();
    }
  }

  @Override
  public boolean cancelled() {
    return interruption.cancelled();
  }
}
