package org.framewright.ui.task;

import org.framewright.base.Progress;

/**
 * What a piece of work reports while it runs, and where it hears that it should stop: progress as
 * the rooms know it, handed on as it is.
 */
public interface Steps extends Progress {
  /** Called as often as one likes, from any thread; {@code total} 0 or less when not known. */
  @Override
  void step(int done, int total);

  /** Whether somebody asked to stop; work that can stop looks here between its steps. */
  @Override
  boolean cancelled();
}
