package org.framewright.ui;

import java.time.Duration;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;

/**
 * The threads behind the interface.
 *
 * @param work for anything
 * @param job one thread on which everything that touches the open job happens, in order
 * @param settings one thread that writes the preferences
 * @param pictures few threads that read pictures
 * @param again does something every so often, on any thread
 */
record Background(Executor work, Executor job, Executor settings, Executor pictures, Again again)
    implements AutoCloseable {
  private static final int PICTURE_READERS = 2;

  /** Threads that pass over what comes after they were closed: the app is going. */
  private record Threads(ExecutorService service) implements Executor {
    @Override
    public void execute(Runnable task) {
      try {
        service.execute(task);
      } catch (RejectedExecutionException _) {
        // Nobody waits for it any more.
      }
    }
  }

  /** Does something again and again until it is closed. */
  @FunctionalInterface
  interface Again {
    AutoCloseable every(Duration pause, Runnable action);
  }

  /** Real threads; none of them keeps the program alive. They give way to the interface. */
  static Background threads() {
    return new Background(
        new Threads(Executors.newThreadPerTaskExecutor(givingWay("work-"))),
        queue("job"),
        queue("settings"),
        new Threads(Executors.newFixedThreadPool(PICTURE_READERS, givingWay("pictures-"))),
        Background::timer);
  }

  private static AutoCloseable timer(Duration pause, Runnable action) {
    var timer = Executors.newSingleThreadScheduledExecutor(givingWay("again-"));
    // One that throws would never be done again.
    Runnable again =
        () -> {
          try {
            action.run();
          } catch (RuntimeException | Error e) {
            var thread = Thread.currentThread();
            thread.getUncaughtExceptionHandler().uncaughtException(thread, e);
          }
        };
    var _ =
        timer.scheduleWithFixedDelay(
            again, pause.toMillis(), pause.toMillis(), TimeUnit.MILLISECONDS);
    return timer::shutdownNow;
  }

  private static Executor queue(String name) {
    return new Threads(Executors.newSingleThreadExecutor(givingWay(name + "-")));
  }

  /**
   * Threads that the interface goes before, where processors are few; and so do the threads that
   * they begin.
   */
  @SuppressWarnings("ThreadPriorityCheck") // nothing is right or wrong by it, only felt or not
  private static ThreadFactory givingWay(String name) {
    return Thread.ofPlatform().daemon().priority(Thread.MIN_PRIORITY).name(name, 0).factory();
  }

  /** Lets what was begun in order be finished: a tick or the preferences are not cut in half. */
  @Override
  public void close() {
    for (var executor : new Executor[] {job, settings}) {
      if (executor instanceof Threads(var service)) {
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
    for (var executor : new Executor[] {work, pictures}) {
      if (executor instanceof Threads(var service)) {
        service.shutdownNow();
      }
    }
  }
}
