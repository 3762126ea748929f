package org.framewright.ui.scan;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import org.framewright.frames.slate.JobKey;
import org.framewright.job.SetupCodes;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * The codes of a job's list. Those of thousands of setups take a while, so they are read away from
 * the interface, and anew when the list says something else; what was scanned meanwhile waits.
 * Called on the interface thread.
 */
public final class ListCodes implements AutoCloseable {
  /** So long a scan waits, longer than any list takes that was measured. */
  private static final Duration LONGEST = Duration.ofSeconds(10);

  /** Nobody scans more in that time. */
  private static final int MOST = 50;

  /** What codes depend on. */
  private record Source(ShotList list, List<JobKey> keys) {}

  private record Read(Source source, SetupCodes codes) {}

  private record Waiting(Runnable then, Runnable tooLong) {}

  private final Executor late;
  private final Newest<Source, Read> reading;
  private final Consumer<? super Throwable> trouble;
  private final Deque<Waiting> waiting = new ArrayDeque<>();
  private Optional<Source> wanted = Optional.empty();
  private Optional<Read> read = Optional.empty();

  /**
   * @param reader makes the codes of a list, in the background
   */
  public ListCodes(
      Function<ShotList, SetupCodes> reader, Tasks tasks, Consumer<? super Throwable> trouble) {
    this(
        reader,
        tasks,
        trouble,
        CompletableFuture.delayedExecutor(LONGEST.toMillis(), TimeUnit.MILLISECONDS, tasks.ui()));
  }

  /**
   * @param late runs what it gets when a scan has waited long enough
   */
  ListCodes(
      Function<ShotList, SetupCodes> reader,
      Tasks tasks,
      Consumer<? super Throwable> trouble,
      Executor late) {
    this.late = late;
    this.trouble = trouble;
    this.reading =
        new Newest<>(
            tasks,
            source -> new Read(source, reader.apply(source.list())),
            this::take,
            this::failed);
  }

  /**
   * The list is this one now; called with each news of the job.
   *
   * @param keys of the job's slates
   */
  public void of(ShotList list, List<JobKey> keys) {
    var source = new Source(list, keys);
    if (wanted.filter(source::equals).isEmpty()) {
      wanted = Optional.of(source);
      reading.offer(source);
    }
  }

  private void take(Read now) {
    read = Optional.of(now);
    serve();
  }

  /** The next news of the job has it tried again. */
  private void failed(Throwable failure) {
    wanted = Optional.empty();
    drop();
    trouble.accept(failure);
  }

  /** One that is served may change the list, and the others wait again. */
  private void serve() {
    while (isCurrent() && !waiting.isEmpty()) {
      waiting.removeFirst().then().run();
    }
  }

  private boolean isCurrent() {
    return read.isPresent() && read.map(Read::source).equals(wanted);
  }

  /** The codes of the list as it is now, if they were read. */
  Optional<SetupCodes> current() {
    return read.filter(_ -> isCurrent()).map(Read::codes);
  }

  /** The codes that were read last; the list may say something else by now. */
  Optional<SetupCodes> latest() {
    return read.map(Read::codes);
  }

  /**
   * Does something once the codes are those of the list, at once where they are.
   *
   * @param tooLong is done in its place where that takes too long
   */
  void whenCurrent(Runnable then, Runnable tooLong) {
    if (isCurrent() && waiting.isEmpty()) {
      then.run();
    } else if (waiting.size() >= MOST) {
      tooLong.run();
    } else {
      var one = new Waiting(then, tooLong);
      waiting.addLast(one);
      late.execute(
          () -> {
            if (waiting.remove(one)) {
              tooLong.run();
            }
          });
    }
  }

  private void drop() {
    while (!waiting.isEmpty()) {
      waiting.removeFirst().tooLong().run();
    }
  }

  /** The job is closed: what waits is told that it was in vain. */
  @Override
  public void close() {
    reading.clear();
    drop();
  }
}
