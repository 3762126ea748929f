package org.framewright.ui;

import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/**
 * The threads behind the interface.
 *
 * @param work for anything
 * @param job one thread on which everything that touches the open job happens, in order
 * @param settings one thread that writes the preferences
 */
record Background(Executor work, Executor job, Executor settings) implements AutoCloseable {

  /** Real threads; none of them keeps the program alive. */
  static Background threads() {
    return new Background(
        Executors.newThreadPerTaskExecutor(Thread.ofVirtual().name("work-", 0).factory()),
        lane("job"),
        lane("settings"));
  }

  /** Everything at once on the caller's thread. */
  static Background immediate() {
    return new Background(Runnable::run, Runnable::run, Runnable::run);
  }

  private static ExecutorService lane(String name) {
    return Executors.newSingleThreadExecutor(Thread.ofPlatform().daemon().name(name).factory());
  }

  /** Lets what was begun in order be finished: a tick or the preferences are not cut in half. */
  @Override
  public void close() {
    for (var executor : new Executor[] {job, settings}) {
      if (executor instanceof ExecutorService service) {
        service.shutdown();
        try {
          if (!service.awaitTermination(5, TimeUnit.SECONDS)) {
            service.shutdownNow();
          }
        } catch (InterruptedException _) {
          Thread.currentThread().interrupt();
        }
      }
    }
    if (work instanceof ExecutorService service) {
      service.shutdownNow();
    }
  }
}
