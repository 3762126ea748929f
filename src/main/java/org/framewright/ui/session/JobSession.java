package org.framewright.ui.session;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.base.Progress;
import org.framewright.frames.FrameScan;
import org.framewright.frames.FrameWatcher;
import org.framewright.job.Elsewhere;
import org.framewright.job.Job;
import org.framewright.job.SlateWatch;
import org.framewright.ui.task.Latest;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/** The open job. Its methods are called on the interface thread unless they say otherwise. */
public final class JobSession implements Steps, AutoCloseable {
  /** A change to the job, or a question to it, made on the queue. */
  @FunctionalInterface
  public interface Change<T> {
    /** Makes it; it is on the disk when this returns. */
    T make(Job job) throws Exception;
  }

  @FunctionalInterface
  private interface Attempt {
    void make() throws Exception;
  }

  /** What became of a change, and the job behind it. */
  private record Made<T>(T result, JobView view) {}

  private static final String SCANNING = "scanning";
  private static final String COUNTING = "counting";
  private static final String REFRESHING = "refreshing";
  private static final String RECOUNTING = "recounting";
  private static final String WATCHING = "watching";
  private static final String SLATES = "slates";

  private final Job job;
  private final Executor queue;
  private final Tasks tasks;
  private final ReadOnlyObjectWrapper<JobView> view;
  private final Latest<JobView> shown;
  private final Latest<FrameScan> scans;
  private final Latest<Boolean> recounts;

  /** Touched on the queue only. */
  private final StepHistory steps;

  /** Touched on the queue only. */
  private FrameScan scan;

  /** Touched on the queue only. */
  private long revision;

  /** Touched on the queue only: the picture that was made last. */
  private JobView last;

  private final ReadOnlyObjectWrapper<List<Throwable>> failures =
      new ReadOnlyObjectWrapper<>(List.of());
  private final Latest<List<Throwable>> failing;
  private final ReadOnlyObjectWrapper<Optional<Elsewhere>> elsewhere;
  private final Latest<Optional<Elsewhere>> heard;

  /** Touched on the queue only: what could not be read, by what was tried. */
  private final Map<String, Throwable> unread = new TreeMap<>();

  /** Touched on the queue only. */
  private FrameWatcher watcher;

  /** Touched on the queue only. */
  private SlateWatch slates;

  private volatile boolean closed;

  private JobSession(Job job, FrameScan scan, JobView first, Executor queue, Executor ui) {
    this.job = job;
    this.scan = scan;
    this.steps = new StepHistory(job);
    this.queue = queue;
    this.tasks = new Tasks(queue, ui);
    this.last = first;
    this.view = new ReadOnlyObjectWrapper<>(first);
    this.shown = new Latest<>(ui, this::show);
    this.failing = new Latest<>(ui, failures::set);
    this.elsewhere = new ReadOnlyObjectWrapper<>(job.elsewhere());
    this.heard = new Latest<>(ui, elsewhere::set);
    this.scans = new Latest<>(queue, this::count);
    this.recounts = new Latest<>(queue, _ -> recount());
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
    var found = job.scan(progress);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    var scan = found.get();
    job.foundPresent(scan);
    return Optional.of(new JobSession(job, scan, JobView.of(0, job, scan), queue, ui));
  }

  /** The job; what it hands out never changes, what writes to it goes through {@link #change}. */
  public Job job() {
    return job;
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
    var lost = !Files.isDirectory(job.folder());
    if (lost) {
      queue.execute(
          () -> {
            if (!closed) {
              failed(REFRESHING, new LostFolder(job.folder()));
            }
          });
    }
    return lost;
  }

  /** What another station did to the list last. */
  public ReadOnlyObjectProperty<Optional<Elsewhere>> elsewhere() {
    return elsewhere.getReadOnlyProperty();
  }

  /** Says what people call this computer. From any thread. */
  public void callComputer(String name) {
    job.callThisStation(name);
  }

  /** Follows the frames folder from now on. */
  public void watch() {
    queue.execute(
        () -> {
          if (!closed) {
            trying(
                WATCHING,
                () -> {
                  watcher = job.watcher(scans::offer);
                  watcher.start();
                  slates = SlateWatch.inBackground(job, queue, new SlatesRead());
                  slates.look(scan);
                });
          }
        });
  }

  /**
   * Does something with the job, in its turn, and shows the job anew before {@code then} runs.
   *
   * @param title what is being done, for people
   */
  public <T> Running change(
      String title,
      Change<T> change,
      Consumer<? super T> then,
      Consumer<? super Throwable> failed) {
    return tasks.run(
        title,
        _ -> {
          var result = change.make(job);
          return new Made<>(result, next());
        },
        made -> {
          show(made.view());
          then.accept(made.result());
        },
        failed);
  }

  /** Looks at the frames folder now: files got other names or came in. From any thread. */
  public void look() {
    queue.execute(
        () -> {
          if (!closed) {
            trying(SCANNING, () -> count(job.scan()));
          }
        });
  }

  /** Reads what other stations wrote. From any thread. */
  public void refresh() {
    queue.execute(
        () -> {
          if (!closed) {
            trying(
                REFRESHING,
                () -> {
                  if (job.refresh()) {
                    shown.offer(next());
                  } else if (!job.told().equals(last.warnings())) {
                    last = last.withListOf(++revision, job);
                    shown.offer(last);
                  }
                });
            heard.offer(job.elsewhere());
          }
        });
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

  /** On the queue. */
  private void count(FrameScan next) {
    if (closed) {
      return;
    }
    trying(
        COUNTING,
        () -> {
          job.recordArrivals(next);
          // The watcher's first look mostly sees what the job was opened with; recording it may
          // have read what another station did.
          if (!next.equals(scan) || !last.isOf(job)) {
            scan = next;
            shown.offer(next());
          }
          if (slates != null) {
            slates.look(next);
          }
        });
  }

  /** On the queue: what fails is shown until it works again; an error too, so that nobody waits. */
  @SuppressWarnings("InterruptedExceptionSwallowed") // the queue's thread is interrupted at its end
  private void trying(String what, Attempt attempt) {
    try {
      attempt.make();
      if (unread.remove(what) != null) {
        failing.offer(List.copyOf(unread.values()));
      }
    } catch (Exception | Error e) {
      failed(what, e);
    }
  }

  /** On the queue: a slate may have placed many frames anew. */
  private final class SlatesRead implements SlateWatch.Listener {
    @Override
    public void read() {
      if (!closed) {
        trying(SLATES, () -> shown.offer(next()));
      }
    }

    @Override
    public void failed(IOException failure) {
      if (!closed) {
        JobSession.this.failed(SLATES, failure);
      }
    }
  }

  /** On the queue. */
  private void failed(String what, Throwable failure) {
    var shown = Files.isDirectory(job.folder()) ? failure : new LostFolder(job.folder());
    var before = unread.put(what, shown);
    if (before == null || !before.toString().equals(shown.toString())) {
      System.getLogger(JobSession.class.getName())
          .log(System.Logger.Level.WARNING, "The job folder could not be read or written", failure);
      failing.offer(List.copyOf(unread.values()));
    }
  }

  /** On the queue. */
  private JobView next() {
    last = JobView.of(++revision, job, scan);
    return last;
  }

  /**
   * A step is shown as soon as it is on the disk, with the counts of before; counting many thousand
   * frames anew follows in its turn.
   */
  private <T> void step(
      Change<T> change, Consumer<? super T> then, Consumer<? super Throwable> failed) {
    tasks.run(
        "",
        _ -> {
          try {
            var result = change.make(job);
            last = last.withListOf(++revision, job);
            return new Made<>(result, last);
          } finally {
            // Of several ticks some may be on the disk where one fails: what is shown is what is
            // there.
            recounts.offer(true);
          }
        },
        made -> {
          show(made.view());
          then.accept(made.result());
        },
        failed);
  }

  /** On the queue. */
  private void recount() {
    if (!closed) {
      trying(RECOUNTING, () -> shown.offer(next()));
    }
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
    queue.execute(
        () -> {
          if (slates != null) {
            slates.close();
          }
          if (watcher != null) {
            // It ends the look that it is taking, which nobody should wait for.
            watcher.close();
          }
        });
  }
}
