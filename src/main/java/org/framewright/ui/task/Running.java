package org.framewright.ui.task;

import java.util.concurrent.atomic.AtomicBoolean;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;

/** One piece of work under way. Its properties change on the interface thread only. */
public final class Running {
  private final String title;
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper(-1);
  private final ReadOnlyBooleanWrapper finished = new ReadOnlyBooleanWrapper(false);
  private final AtomicBoolean cancelled = new AtomicBoolean();

  Running(String title) {
    this.title = title;
  }

  /** What is being done, for people. */
  public String title() {
    return title;
  }

  /** From 0 to 1; below 0 while the amount of work is unknown. */
  public ReadOnlyDoubleProperty progress() {
    return progress.getReadOnlyProperty();
  }

  /** True once the result, the failure or nothing (after a cancel) was handed over. */
  public ReadOnlyBooleanProperty finished() {
    return finished.getReadOnlyProperty();
  }

  /** Asks the work to stop; it stops between two of its steps. */
  public void cancel() {
    cancelled.set(true);
  }

  /** Whether {@link #cancel} was asked for. */
  public boolean cancelled() {
    return cancelled.get();
  }

  void progress(double fraction) {
    progress.set(fraction);
  }

  void finish() {
    finished.set(true);
  }
}
