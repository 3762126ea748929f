package org.framewright.live;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executor;
import org.framewright.base.Progress;
import org.framewright.frames.FrameScan;
import org.framewright.frames.FrameWatcher;
import org.framewright.job.Elsewhere;
import org.framewright.job.Job;
import org.framewright.job.SlateWatch;

/**
 * An open job that is followed: new frames, other stations, slates and what is done here each end
 * in a new {@link JobView}. Everything that reads or writes the job happens in order on one thread,
 * the queue. Its methods may be called from any thread unless they say otherwise.
 */
public final class LiveJob implements AutoCloseable {
  /** Hears of the job, on the queue. */
  public interface Listener {
    /** The job is as in this picture now. */
    void shown(JobView view);

    /** Why the job's folder cannot be read or written just now; empty again when it can be. */
    default void failing(List<Throwable> failures) {}

    /** What another station did to the list last. */
    default void heard(Optional<Elsewhere> elsewhere) {}
  }

  /** A change to the job, or a question to it. */
  @FunctionalInterface
  public interface Change<T> {
    /** Makes it; it is on the disk when this returns. */
    T make(Job job) throws Exception;
  }

  /** What became of a change, and the job behind it. */
  public record Made<T>(T result, JobView view) {}

  @FunctionalInterface
  private interface Attempt {
    void make() throws Exception;
  }

  private static final String SCANNING = "scanning";
  private static final String COUNTING = "counting";
  private static final String REFRESHING = "refreshing";
  private static final String RECOUNTING = "recounting";
  private static final String WATCHING = "watching";
  private static final String SLATES = "slates";

  private final Job job;
  private final Executor queue;
  private final List<Listener> listeners = new CopyOnWriteArrayList<>();
  private final Latest<FrameScan> scans;
  private final Latest<Boolean> recounts;

  /** Written on the queue only. */
  private volatile JobView last;

  /** Written on the queue only. */
  private volatile List<Throwable> failures = List.of();

  /** Touched on the queue only. */
  private FrameScan scan;

  /** Touched on the queue only: what could not be read, by what was tried. */
  private final Map<String, Throwable> unread = new TreeMap<>();

  /** Touched on the queue only. */
  private FrameWatcher watcher;

  /** Touched on the queue only. */
  private SlateWatch slates;

  private volatile boolean closed;

  private LiveJob(Job job, FrameScan scan, Executor queue) {
    this.job = job;
    this.scan = scan;
    this.queue = queue;
    this.last = JobView.of(0, job, scan);
    this.scans = new Latest<>(queue, this::count);
    this.recounts = new Latest<>(queue, _ -> recount());
  }

  /**
   * Begins with an opened job: looks at its frames once.
   *
   * @param progress of looking at the frames
   * @param queue one thread, the same for as long as the job is followed
   * @return nothing if it was stopped
   */
  public static Optional<LiveJob> begin(Job job, Progress progress, Executor queue)
      throws IOException {
    var found = job.scan(progress);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    var scan = found.get();
    job.foundPresent(scan);
    return Optional.of(new LiveJob(job, scan, queue));
  }

  /** The job; what it hands out never changes, what writes to it goes through this. */
  public Job job() {
    return job;
  }

  /** The newest picture of the job. */
  public JobView now() {
    return last;
  }

  /** Why the job's folder cannot be read or written just now; empty while it can be. */
  public List<Throwable> failures() {
    return failures;
  }

  /** Tells a listener of all that comes, until what is returned is closed. */
  public AutoCloseable listen(Listener listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  /**
   * Looks whether the job's folder is not there, so that nothing can be kept in it; that is then
   * told until it is back.
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

  /** Looks at the frames folder now: files got other names or came in. */
  public void look() {
    queue.execute(
        () -> {
          if (!closed) {
            trying(SCANNING, () -> count(job.scan()));
          }
        });
  }

  /** Reads what other stations wrote, and shows what became of the job beside the queue. */
  public void refresh() {
    queue.execute(
        () -> {
          if (!closed) {
            trying(
                REFRESHING,
                () -> {
                  // The exchange with a studio's store may have read it already.
                  if (job.refresh() || !last.isOf(job)) {
                    show(next());
                  }
                });
            listeners.forEach(listener -> listener.heard(job.elsewhere()));
          }
        });
  }

  /** Makes a change in its turn; the job is shown anew before its outcome is told. */
  @SuppressWarnings("InterruptedExceptionSwallowed") // whoever asked gets it like any other
  public <T> CompletableFuture<T> ask(Change<T> change) {
    var outcome = new CompletableFuture<T>();
    queue.execute(
        () -> {
          try {
            outcome.complete(step(change).result());
          } catch (Throwable e) { // An error too: whoever waits would wait for ever.
            outcome.completeExceptionally(e);
          }
        });
    return outcome;
  }

  /** On the queue: makes a change, and counts all frames anew. */
  public <T> Made<T> make(Change<T> change) throws Exception {
    var result = change.make(job);
    return new Made<>(result, show(next()));
  }

  /**
   * On the queue: makes a change that is shown as soon as it is on the disk, with the counts of
   * before; counting many thousand frames anew follows in its turn.
   */
  public <T> Made<T> step(Change<T> change) throws Exception {
    try {
      var result = change.make(job);
      return new Made<>(result, show(last.withListOf(last.revision() + 1, job)));
    } finally {
      // Of several ticks some may be on the disk where one fails: what is shown is what is there.
      recounts.offer(true);
    }
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
            show(next());
          }
          if (slates != null) {
            slates.look(next);
          }
        });
  }

  /** On the queue. */
  private void recount() {
    if (!closed) {
      trying(RECOUNTING, () -> show(next()));
    }
  }

  /** On the queue: what fails is told until it works again; an error too, so that nobody waits. */
  @SuppressWarnings("InterruptedExceptionSwallowed") // the queue's thread is interrupted at its end
  private void trying(String what, Attempt attempt) {
    try {
      attempt.make();
      if (unread.remove(what) != null) {
        tellFailures();
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
        trying(SLATES, () -> show(next()));
      }
    }

    @Override
    public void failed(IOException failure) {
      if (!closed) {
        LiveJob.this.failed(SLATES, failure);
      }
    }
  }

  /** On the queue. */
  private void failed(String what, Throwable failure) {
    var shown = Files.isDirectory(job.folder()) ? failure : new LostFolder(job.folder());
    var before = unread.put(what, shown);
    if (before == null || !before.toString().equals(shown.toString())) {
      System.getLogger(LiveJob.class.getName())
          .log(System.Logger.Level.WARNING, "The job folder could not be read or written", failure);
      tellFailures();
    }
  }

  private void tellFailures() {
    failures = List.copyOf(unread.values());
    listeners.forEach(listener -> listener.failing(failures));
  }

  /** On the queue. */
  private JobView next() {
    return JobView.of(last.revision() + 1, job, scan);
  }

  /** On the queue. */
  private JobView show(JobView next) {
    last = next;
    listeners.forEach(listener -> listener.shown(next));
    return next;
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
