package org.framewright.live;

import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/**
 * The newest of many values on its way to a queue, mostly the interface's: however fast they come,
 * at most one refresh waits in the queue, and it takes the newest value.
 */
public final class Latest<T> {
  private final Executor queue;
  private final Consumer<? super T> sink;
  private final AtomicReference<T> waiting = new AtomicReference<>();

  /** Values go to {@code sink} by way of {@code queue}. */
  public Latest(Executor queue, Consumer<? super T> sink) {
    this.queue = queue;
    this.sink = sink;
  }

  /** From any thread; never null. */
  public void offer(T value) {
    if (waiting.getAndSet(value) == null) {
      queue.execute(this::flush);
    }
  }

  private void flush() {
    var value = waiting.getAndSet(null);
    if (value != null) {
      sink.accept(value);
    }
  }
}
