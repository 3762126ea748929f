package org.framewright.ui.session;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.base.Progress;
import org.framewright.job.Elsewhere;
import org.framewright.job.Job;
import org.framewright.live.JobView;
import org.framewright.live.Latest;
import org.framewright.live.LiveJob;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/** The open job. Its methods are called on the interface thread unless they say otherwise. */
public final class JobSession implements Steps, AutoCloseable {
  private final LiveJob live;
  private final Tasks tasks;
  private final ReadOnlyObjectWrapper<JobView> view;
  private final Latest<JobView> shown;

  /** Touched on the queue only. */
  private final StepHistory steps;

  private final ReadOnlyObjectWrapper<List<Throwable>> failures =
      new ReadOnlyObjectWrapper<>(List.of());
  private final Latest<List<Throwable>> failing;
  private final ReadOnlyObjectWrapper<Optional<Elsewhere>> elsewhere;
  private final Latest<Optional<Elsewhere>> heard;
  private volatile boolean closed;

  private JobSession(LiveJob live, Executor queue, Executor ui) {
    this.live = live;
    this.steps = new StepHistory(live.job());
    this.tasks = new Tasks(queue, ui);
    this.view = new ReadOnlyObjectWrapper<>(live.now());
    this.shown = new Latest<>(ui, this::show);
    this.failing = new Latest<>(ui, failures::set);
    this.elsewhere = new ReadOnlyObjectWrapper<>(live.job().elsewhere());
    this.heard = new Latest<>(ui, elsewhere::set);
    live.listen(
        new LiveJob.Listener() {
          @Override
          public void shown(JobView view) {
            shown.offer(view);
          }

          @Override
          public void failing(List<Throwable> failures) {
            failing.offer(failures);
          }

          private Optional<Elsewhere> before = JobSession.this.elsewhere.get();

          @Override
          public void heard(Optional<Elsewhere> elsewhere) {
            // It is asked every few seconds: the interface is not woken up for what it knows.
            if (!elsewhere.equals(before)) {
              before = elsewhere;
              heard.offer(elsewhere);
            }
          }
        });
  }

  /**
   * Begins with an opened job: looks at its frames once. Called away from the interface thread.
   *
   * @param progress of looking at the frames
   * @param queue one thread, the same for the whole session
   * @return nothing if it was stopped
   */
  public static Optional<JobSession> begin(Job job, Progress progress, Executor queue, Executor ui)
      throws IOException {
    return LiveJob.begin(job, progress, queue).map(live -> new JobSession(live, queue, ui));
  }

  /** The job as others follow it, too. */
  public LiveJob live() {
    return live;
  }

  /** The job; what it hands out never changes, what writes to it goes through {@link #change}. */
  public Job job() {
    return live.job();
  }

  /** The newest picture of the job; changes on the interface thread. */
  public ReadOnlyObjectProperty<JobView> view() {
    return view.getReadOnlyProperty();
  }

  /** Why the job's folder cannot be read or written just now; empty again when it can be. */
  public ReadOnlyObjectProperty<List<Throwable>> failures() {
    return failures.getReadOnlyProperty();
  }

  /**
   * Looks whether the job's folder is not there, so that nothing can be kept in it; that is then
   * shown until it is back. Not on the interface thread.
   */
  public boolean lookWhetherLost() {
    return live.lookWhetherLost();
  }

  /** What another station did to the list last. */
  public ReadOnlyObjectProperty<Optional<Elsewhere>> elsewhere() {
    return elsewhere.getReadOnlyProperty();
  }

  /** Says what people call this computer. From any thread. */
  public void callComputer(String name) {
    live.job().callThisStation(name);
  }

  /** Follows the frames folder from now on. */
  public void watch() {
    live.watch();
  }

  /**
   * Does something with the job, in its turn, and shows the job anew before {@code then} runs.
   *
   * @param title what is being done, for people
   */
  public <T> Running change(
      String title,
      LiveJob.Change<T> change,
      Consumer<? super T> then,
      Consumer<? super Throwable> failed) {
    return run(title, _ -> live.make(change), then, failed);
  }

  /** Looks at the frames folder now: files got other names or came in. From any thread. */
  public void look() {
    live.look();
  }

  /** Reads what other stations wrote. From any thread. */
  public void refresh() {
    live.refresh();
  }

  @Override
  public void take(Step step, Runnable then, Consumer<Throwable> failed) {
    step(
        _ -> {
          steps.take(step);
          return step;
        },
        _ -> then.run(),
        failed);
  }

  @Override
  public void undo(Consumer<Optional<Step>> then, Consumer<Throwable> failed) {
    step(_ -> steps.undo(), then, failed);
  }

  @Override
  public void redo(Consumer<Optional<Step>> then, Consumer<Throwable> failed) {
    step(_ -> steps.redo(), then, failed);
  }

  private <T> void step(
      LiveJob.Change<T> change, Consumer<? super T> then, Consumer<? super Throwable> failed) {
    run("", _ -> live.step(change), then, failed);
  }

  private <T> Running run(
      String title,
      Tasks.Work<LiveJob.Made<T>> work,
      Consumer<? super T> then,
      Consumer<? super Throwable> failed) {
    return tasks.run(
        title,
        work,
        made -> {
          show(made.view());
          then.accept(made.result());
        },
        failed);
  }

  /** A burst of scans may overtake a change in the interface's queue; the newer picture stays. */
  private void show(JobView next) {
    if (!closed && next.revision() > view.get().revision()) {
      view.set(next);
    }
  }

  /** Stops following the folder; changes that were begun are still finished. */
  @Override
  public void close() {
    closed = true;
    live.close();
  }
}
