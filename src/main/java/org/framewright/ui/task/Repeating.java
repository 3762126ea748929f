package org.framewright.ui.task;

import java.time.Duration;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.Executor;
import java.util.function.Supplier;

/**
 * Does something again and again on the interface thread, such as showing the time. An animation
 * that does it wakes the interface sixty times a second, for as long as the app is open; this one
 * sleeps. Its methods are called on the interface thread.
 */
public final class Repeating {
  private final Supplier<Duration> pause;
  private final Executor ui;
  private final Runnable action;

  /** The thread that counts now; what an earlier one still brings is not done. */
  private Thread current;

  /**
   * One that is not started.
   *
   * @param pause between two times
   * @param ui the interface thread's queue, in which never more than one waits
   */
  public Repeating(Duration pause, Executor ui, Runnable action) {
    this(() -> pause, ui, action);
  }

  /**
   * One that is not started.
   *
   * @param pause until the next time, asked on the interface thread when one begins
   * @param ui the interface thread's queue, in which never more than one waits
   */
  public Repeating(Supplier<Duration> pause, Executor ui, Runnable action) {
    this.pause = pause;
    this.ui = ui;
    this.action = action;
  }

  /** Begins with a pause; nothing happens where it was begun already. */
  public void start() {
    if (current == null) {
      var first = pause.get();
      current = Thread.ofVirtual().name("repeating").start(() -> count(first));
    }
  }

  /** Begins the pause anew, which may be another one now; nothing happens where it is stopped. */
  public void again() {
    if (current != null) {
      stop();
      start();
    }
  }

  /** Nothing is done any more. */
  public void stop() {
    if (current != null) {
      current.interrupt();
      current = null;
    }
  }

  private void count(Duration first) {
    var counting = Thread.currentThread();
    var next = new ArrayBlockingQueue<Duration>(1);
    try {
      Thread.sleep(first);
      while (true) {
        ui.execute(
            () -> {
              try {
                if (current == counting) {
                  action.run();
                }
              } finally {
                next.add(pause.get());
              }
            });
        Thread.sleep(next.take());
      }
    } catch (InterruptedException e) {
      counting.interrupt();
    }
  }
}
