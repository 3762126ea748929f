package org.framewright.studio;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.framewright.job.JobException;

/**
 * Asks a store the same again and again, on a thread of its own: at once when there may be news,
 * and every few seconds besides, since hints are not relied on. Where the store is away, it is
 * tried anew.
 *
 * @param <A> what it answers
 */
final class StoreRounds<A> implements AutoCloseable {
  /** A connection with the store. */
  interface Visit<A> extends AutoCloseable {
    A ask() throws IOException;

    @Override
    void close();
  }

  /** How one comes to such a connection; empty where there is no store to ask. */
  @FunctionalInterface
  interface Way<A> {
    /**
     * Opens one.
     *
     * @param hint called on any thread when the store may have news
     */
    Optional<? extends Visit<A>> open(Runnable hint) throws IOException, JobException;
  }

  /** Hears what comes of it, on the thread that asks. */
  interface Listener<A> {
    void answered(A answer);

    /** There is no store to ask, which may change. */
    default void noStore() {}

    /** An {@link IOException} or a {@link JobException}. */
    void failed(Exception why);
  }

  /** It is asked this often at least. */
  static final Duration ASK = Duration.ofSeconds(5);

  private final Way<A> way;
  private final Listener<A> listener;
  private final Duration ask;
  private final Duration later;
  private final Semaphore news = new Semaphore(0);
  private final Thread thread;
  private volatile boolean closed;

  /**
   * Nothing is asked yet.
   *
   * @param name of its thread
   * @param ask how long it waits from one question to the next
   * @param later how long it waits where there is no store, or it is away
   */
  StoreRounds(String name, Way<A> way, Listener<A> listener, Duration ask, Duration later) {
    this.way = way;
    this.listener = listener;
    this.ask = ask;
    this.later = later;
    this.thread = Thread.ofPlatform().daemon().name(name).unstarted(this::follow);
  }

  void begin() {
    thread.start();
  }

  /** Lets it ask at once. */
  void news() {
    news.release();
  }

  private void follow() {
    while (!closed) {
      try {
        visit();
      } catch (IOException | JobException e) {
        if (!closed) {
          listener.failed(e);
        }
      }
      pause(later);
    }
  }

  private void visit() throws IOException, JobException {
    try (var visit = way.open(this::news).orElse(null)) {
      if (visit == null) {
        listener.noStore();
      }
      while (visit != null && !closed) {
        var answer = visit.ask();
        if (!closed) {
          listener.answered(answer);
        }
        pause(ask);
      }
    }
  }

  private void pause(Duration time) {
    try {
      if (!closed && news.tryAcquire(time.toMillis(), TimeUnit.MILLISECONDS)) {
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
