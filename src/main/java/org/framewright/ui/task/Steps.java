package org.framewright.ui.task;

import org.framewright.frames.ScanProgress;
import org.framewright.renaming.Progress;

/**
 * What a piece of work tells while it runs, and where it hears that it should stop. It is what each
 * room calls progress, and is handed on as it is.
 */
public interface Steps extends Progress, ScanProgress {
  /** Told as often as one likes, from any thread; {@code total} 0 or less when it is not known. */
  @Override
  void step(int done, int total);

  /** Whether somebody asked to stop; work that can stop looks here between its steps. */
  @Override
  boolean cancelled();
}
