package org.framewright.ui.task;

import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/**
 * The newest of many values on its way to the interface: however fast they come, at most one
 * refresh waits in the interface's queue, and it takes the newest value.
 */
public final class Latest<T> {
  private final Executor ui;
  private final Consumer<? super T> sink;
  private final AtomicReference<T> waiting = new AtomicReference<>();

  /** Values go to {@code sink} by way of {@code ui}. */
  public Latest(Executor ui, Consumer<? super T> sink) {
    this.ui = ui;
    this.sink = sink;
  }

  /** From any thread; never null. */
  public void offer(T value) {
    if (waiting.getAndSet(value) == null) {
      ui.execute(this::flush);
    }
  }

  private void flush() {
    var value = waiting.getAndSet(null);
    if (value != null) {
      sink.accept(value);
    }
  }
}
