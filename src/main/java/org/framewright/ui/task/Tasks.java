package org.framewright.ui.task;

import java.util.concurrent.Callable;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.live.Latest;

/**
 * Runs work in the background and brings its outcome to the interface thread. All its methods are
 * called on the interface thread.
 */
public final class Tasks {
  /** A piece of work; it never touches the interface. */
  @FunctionalInterface
  public interface Work<T> {
    /** Does it; an exception or error goes to the failure handler as it is. */
    T run(Steps steps) throws Exception;
  }

  /** A piece of work on something; it never touches the interface. */
  @FunctionalInterface
  public interface WorkOn<A, T> {
    /** Does it; an exception or error goes to the failure handler as it is. */
    T run(A what, Steps steps) throws Exception;
  }

  private final Executor background;
  private final Executor ui;
  private final ObservableList<Running> running = FXCollections.observableArrayList();
  private final ObservableList<Running> shown = FXCollections.unmodifiableObservableList(running);

  /**
   * @param background where work runs; one thread of it makes a queue, in which work keeps its
   *     order
   * @param ui the interface thread's queue, {@code Platform::runLater} in the app
   */
  public Tasks(Executor background, Executor ui) {
    this.background = background;
    this.ui = ui;
  }

  /** Runs everything at once on the caller's thread; for tests. */
  public static Tasks immediate() {
    return new Tasks(Runnable::run, Runnable::run);
  }

  /** What runs now, oldest first. */
  public ObservableList<Running> running() {
    return shown;
  }

  /** The interface thread's queue. */
  public Executor ui() {
    return ui;
  }

  /**
   * Starts a piece of work.
   *
   * @param title what is being done, for people
   * @param then gets the result on the interface thread, also when the work was cancelled but had a
   *     result to give
   * @param failed gets the failure on the interface thread
   */
  public <T> Running run(
      String title, Work<T> work, Consumer<? super T> then, Consumer<? super Throwable> failed) {
    var task = listed(title);
    begin(task, work, then, failed);
    return task;
  }

  /**
   * Starts a piece of work as soon as it is known what to work on; it is listed at once.
   *
   * @param on comes on any thread; if it fails, the work has failed
   * @param then gets the result on the interface thread
   * @param failed gets the failure on the interface thread
   */
  public <A, T> Running run(
      String title,
      CompletionStage<A> on,
      WorkOn<? super A, T> work,
      Consumer<? super T> then,
      Consumer<? super Throwable> failed) {
    var task = listed(title);
    on.whenComplete(
        (what, failure) ->
            begin(
                task,
                steps -> {
                  if (failure instanceof Exception e) {
                    throw e;
                  } else if (failure instanceof Error e) {
                    throw e;
                  }
                  return work.run(what, steps);
                },
                then,
                failed));
    return task;
  }

  /** Work that no thread takes has failed, as when memory has no room for one. */
  private <T> void begin(
      Running task, Work<T> work, Consumer<? super T> then, Consumer<? super Throwable> failed) {
    try {
      background.execute(() -> work(task, work, then, failed));
    } catch (RuntimeException | Error e) {
      ui.execute(() -> over(task, () -> failed.accept(e)));
    }
  }

  private Running listed(String title) {
    var task = new Running(title);
    running.add(task);
    return task;
  }

  private Steps steps(Running task) {
    var progress = new Latest<Double>(ui, task::progress);
    return new Steps() {
      @Override
      public void step(int done, int total) {
        progress.offer(total <= 0 ? -1.0 : Math.clamp((double) done / total, 0.0, 1.0));
      }

      @Override
      public boolean cancelled() {
        return task.cancelled();
      }
    };
  }

  /**
   * Runs a piece of work that is not listed among what runs: it is short and follows what somebody
   * does.
   *
   * @param then gets the result on the interface thread
   * @param failed gets the failure on the interface thread
   */
  public <T> void quietly(
      Callable<T> work, Consumer<? super T> then, Consumer<? super Throwable> failed) {
    try {
      background.execute(() -> ui.execute(outcome(work, then, failed)));
    } catch (RuntimeException | Error e) {
      ui.execute(() -> failed.accept(e));
    }
  }

  private <T> void work(
      Running task, Work<T> work, Consumer<? super T> then, Consumer<? super Throwable> failed) {
    var outcome = outcome(() -> work.run(steps(task)), then, failed);
    ui.execute(() -> over(task, outcome));
  }

  private void over(Running task, Runnable outcome) {
    running.remove(task);
    try {
      outcome.run();
    } finally {
      task.finish();
    }
  }

  @SuppressWarnings("InterruptedExceptionSwallowed") // goes to the failure handler like any other
  private static <T> Runnable outcome(
      Callable<T> work, Consumer<? super T> then, Consumer<? super Throwable> failed) {
    try {
      var result = work.call();
      return () -> then.accept(result);
    } catch (Throwable e) { // An error too: whoever waits for the outcome would wait for ever.
      return () -> failed.accept(e);
    }
  }
}
