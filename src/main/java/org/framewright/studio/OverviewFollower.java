package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/**
 * Asks the store of a person's settings for all sets, again and again, on a thread of its own, for
 * as long as somebody looks at them. It changes nothing there.
 */
public final class OverviewFollower implements AutoCloseable {
  /** What came of asking. */
  public sealed interface Heard {
    /** This computer goes by no store. */
    record NoStore() implements Heard {}

    /**
     * All sets.
     *
     * @param folders where this computer has the folders of some of them
     */
    record Sets(Overview overview, Map<UUID, Path> folders) implements Heard {
      public Sets {
        folders = Map.copyOf(folders);
      }
    }

    /** The store cannot be used, or the settings cannot be read. */
    record Away(Problem why) implements Heard {}
  }

  /** A connection with the store. */
  interface Visit extends AutoCloseable {
    Heard.Sets ask() throws IOException;

    @Override
    void close();
  }

  /** How one comes to such a connection; empty where this computer goes by no store. */
  @FunctionalInterface
  interface Way {
    /**
     * Opens one.
     *
     * @param hint called on any thread when the store may have news
     */
    Optional<Visit> open(Runnable hint) throws IOException;
  }

  /** Hints are not relied on: it is asked this often. */
  private static final Duration ASK = Duration.ofSeconds(5);

  private record StoreVisit(Store store, StoreHints hints, Map<UUID, Path> folders)
      implements Visit {
    @Override
    public Heard.Sets ask() throws IOException {
      return new Heard.Sets(Overview.of(store), folders);
    }

    @Override
    public void close() {
      hints.close();
      store.close();
    }
  }

  private final Way way;
  private final Consumer<Heard> listener;
  private final Duration ask;
  private final Semaphore news = new Semaphore(0);
  private final Thread thread;
  private volatile boolean closed;

  OverviewFollower(Way way, Consumer<Heard> listener, Duration ask) {
    this.way = way;
    this.listener = listener;
    this.ask = ask;
    this.thread = Thread.ofPlatform().daemon().name("all sets").unstarted(this::follow);
  }

  /**
   * Begins to ask.
   *
   * @param settings the folder of the user's settings, which say by which store this computer goes
   * @param listener called on a thread of its own with each answer
   */
  public static OverviewFollower begin(Path settings, Clock clock, Consumer<Heard> listener) {
    var kept = new StudioSettings(settings);
    return new OverviewFollower(hint -> visit(kept, clock, hint), listener, ASK).started();
  }

  /** Starts it; for one that was made in another way than by {@link #begin}. */
  OverviewFollower started() {
    thread.start();
    return this;
  }

  private static Optional<Visit> visit(StudioSettings settings, Clock clock, Runnable hint)
      throws IOException {
    var kept = settings.read();
    if (kept.isEmpty()) {
      return Optional.empty();
    }
    var store = Store.open(kept.get());
    return Optional.of(
        new StoreVisit(
            store, StoreHints.listen(store, _ -> hint.run()), folders(kept.get(), clock)));
  }

  /** A job is told by its folder; one that is not at hand cannot be opened either. */
  private static Map<UUID, Path> folders(StudioSettings.Kept kept, Clock clock) {
    var folders = new HashMap<UUID, Path>();
    for (var folder : kept.jobs()) {
      try {
        folders.putIfAbsent(OwnSet.id(Job.open(folder, clock)), folder);
      } catch (IOException | JobException e) {
        // Its drive is not plugged in, or it was put away.
      }
    }
    return folders;
  }

  private void follow() {
    while (!closed) {
      try {
        visit();
      } catch (StoreException e) {
        tell(new Heard.Away(e.problem()));
      } catch (IOException e) {
        tell(new Heard.Away(FileProblems.of(e)));
      }
      pause();
    }
  }

  private void visit() throws IOException {
    try (var visit = way.open(news::release).orElse(null)) {
      if (visit == null) {
        tell(new Heard.NoStore());
      }
      while (visit != null && !closed) {
        tell(visit.ask());
        pause();
      }
    }
  }

  private void tell(Heard heard) {
    if (!closed) {
      listener.accept(heard);
    }
  }

  private void pause() {
    try {
      if (!closed && news.tryAcquire(ask.toMillis(), TimeUnit.MILLISECONDS)) {
        news.drainPermits();
      }
    } catch (InterruptedException e) {
      closed = true;
    }
  }

  /** Ends it; the connection goes in a moment. */
  @Override
  public void close() {
    closed = true;
    news.release();
  }
}
