package org.framewright.ui.task;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executor;

/**
 * Does something again and again on the interface thread, such as showing the time. An animation
 * that does it wakes the interface sixty times a second, for as long as the app is open; this one
 * sleeps. Its methods are called on the interface thread.
 */
public final class Repeating {
  private final Duration pause;
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
    this.pause = pause;
    this.ui = ui;
    this.action = action;
  }

  /** Begins with a pause; nothing happens where it was begun already. */
  public void start() {
    if (current == null) {
      current = Thread.ofVirtual().name("repeating").start(this::count);
    }
  }

  /** Nothing is done any more. */
  public void stop() {
    if (current != null) {
      current.interrupt();
      current = null;
    }
  }

  private void count() {
    var counting = Thread.currentThread();
    try {
      while (true) {
        Thread.sleep(pause);
        var done = new CountDownLatch(1);
        ui.execute(
            () -> {
              try {
                if (current == counting) {
                  action.run();
                }
              } finally {
                done.countDown();
              }
            });
        done.await();
      }
    } catch (InterruptedException e) {
      counting.interrupt();
    }
  }
}
