package org.framewright.share;

import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;

/**
 * Ends what waits too long for somebody who does not read. Each exchange has a thread of its own;
 * interrupting it closes its connection ({@link java.nio.channels.InterruptibleChannel}), which
 * closing the connection from here would not do: a stream that is being written to is locked.
 */
final class WriteWatch {
  static final Duration PATIENCE = Duration.ofSeconds(20);

  /** One exchange, on its thread. */
  final class Guard implements AutoCloseable {
    private final Thread thread = Thread.currentThread();
    private volatile boolean writing;
    private volatile long since;

    private Guard() {}

    /** Something is about to be written: it has its time from now on. */
    void writing() {
      since = nanos.getAsLong();
      writing = true;
    }

    /** It was written. */
    void written() {
      writing = false;
    }

    @Override
    public void close() {
      guards.remove(this);
    }
  }

  private final Set<Guard> guards = ConcurrentHashMap.newKeySet();
  private final LongSupplier nanos;

  WriteWatch(LongSupplier nanos) {
    this.nanos = nanos;
  }

  Guard begin() {
    var guard = new Guard();
    guards.add(guard);
    return guard;
  }

  /** Ends those that have waited too long. */
  void sweep() {
    long now = nanos.getAsLong();
    for (var guard : guards) {
      if (guard.writing && now - guard.since > PATIENCE.toNanos()) {
        guard.thread.interrupt();
      }
    }
  }
}
