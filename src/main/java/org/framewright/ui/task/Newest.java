package org.framewright.ui.task;

import java.util.function.Consumer;

/**
 * Works out the newest of many inputs in the background, quietly: while one is being worked on, of
 * all that come meanwhile only the last waits. For what follows somebody's typing. Called on the
 * interface thread.
 *
 * @param <I> what it is worked out from
 * @param <O> what it becomes
 */
public final class Newest<I, O> {
  /** The work; it never touches the interface. */
  @FunctionalInterface
  public interface Work<I, O> {
    /** Does it; an exception or error goes to the failure handler as it is. */
    O of(I input) throws Exception;
  }

  private final Tasks tasks;
  private final Work<I, O> work;
  private final Consumer<? super O> then;
  private final Consumer<? super Throwable> failed;
  private I waiting;
  private boolean busy;

  /** Results go to {@code then}, those of inputs that are no longer the newest included. */
  public Newest(
      Tasks tasks, Work<I, O> work, Consumer<? super O> then, Consumer<? super Throwable> failed) {
    this.tasks = tasks;
    this.work = work;
    this.then = then;
    this.failed = failed;
  }

  /** A newer input; never null. */
  public void offer(I input) {
    waiting = input;
    if (!busy) {
      next();
    }
  }

  /** Forgets what waits. */
  public void clear() {
    waiting = null;
  }

  private void next() {
    var input = waiting;
    if (input == null) {
      return;
    }
    waiting = null;
    busy = true;
    tasks.quietly(
        () -> work.of(input),
        result -> over(() -> then.accept(result)),
        failure -> over(() -> failed.accept(failure)));
  }

  private void over(Runnable outcome) {
    busy = false;
    try {
      outcome.run();
    } finally {
      if (!busy) {
        next();
      }
    }
  }
}
