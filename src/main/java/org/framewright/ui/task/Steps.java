package org.framewright.ui.task;

/** What a piece of work tells while it runs, and where it hears that it should stop. */
public interface Steps {
  /** Told as often as one likes; {@code total} 0 or less when it is not known. */
  void step(long done, long total);

  /** Whether somebody asked to stop; work that can stop looks here between its steps. */
  boolean cancelled();
}
