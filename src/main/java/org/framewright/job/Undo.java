package org.framewright.job;

import java.io.IOException;

/** How one change to the job is undone: the state is as if it had never been. */
@FunctionalInterface
public interface Undo {
  /**
   * Undoes it; the log keeps the trace of both.
   *
   * @throws IOException if the log cannot be written; then the change stays
   */
  void run() throws IOException, JobException;
}
