package org.framewright.cli;

import java.util.concurrent.CountDownLatch;
import org.framewright.base.Progress;

/** Turns Ctrl-C into a cancel, and keeps the program alive until what was done is taken back. */
final class Interruption implements Progress, AutoCloseable {
  private final CountDownLatch over = new CountDownLatch(1);
  private final Thread hook = new Thread(this::stop, "cancel on interrupt");
  private volatile boolean cancelled;

  Interruption() {
    Runtime.getRuntime().addShutdownHook(hook);
  }

  private void stop() {
    cancelled = true;
    try {
      over.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void step(int done, int total) {}

  @Override
  public boolean cancelled() {
    return cancelled;
  }

  @Override
  public void close() {
    over.countDown();
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      // The program is already ending, which is what the hook is for.
    }
  }
}
