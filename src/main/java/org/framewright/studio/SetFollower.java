package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.job.JobException;
import org.framewright.job.JobMirror;

/**
 * Keeps an open job and the store alike, on a thread of its own, for as long as the job is open.
 * Where this computer goes by no store, or the job was not added to it, nothing happens until that
 * changes. Nothing that is done to the job ever waits for it.
 */
public final class SetFollower implements AutoCloseable {
  /** What is to be known of it; called on its thread. */
  public interface Listener {
    /** The folder has events now that another computer made. */
    void brought();

    /** What a person must decide, such as two computers that write under one name. */
    void told(List<Text> told);

    /** Why the store cannot be used, when that begins. Work goes on, and what it lacks follows. */
    void away(StoreException why);

    /** The store can be used again. */
    void reached();
  }

  /** A connection with the store in which a set is followed. */
  interface Visit extends AutoCloseable {
    JobMirror.Exchanged exchange() throws IOException;

    /** What a person should know of the last exchange. */
    List<Text> told();

    @Override
    void close();
  }

  /** How one comes to such a connection; empty where the job is in no store. */
  @FunctionalInterface
  interface Way {
    /**
     * Opens one.
     *
     * @param hint called on any thread when the store may have news
     */
    Optional<Visit> open(Runnable hint) throws IOException, JobException;
  }

  /** Hints are not relied on: it is asked this often. */
  private static final Duration ASK = Duration.ofSeconds(5);

  /** How long to wait where there is no store, or it is away. */
  private static final Duration LATER = Duration.ofSeconds(15);

  private final Way way;
  private final Listener listener;
  private final Duration ask;
  private final Duration later;
  private final Semaphore news = new Semaphore(0);
  private final Thread thread;
  private volatile boolean closed;

  /** Touched by the thread only. */
  private boolean isAway;

  /** Touched by the thread only. */
  private List<Text> told = List.of();

  SetFollower(Way way, Listener listener, Duration ask, Duration later) {
    this.way = way;
    this.listener = listener;
    this.ask = ask;
    this.later = later;
    this.thread = Thread.ofPlatform().daemon().name("studio").unstarted(this::follow);
  }

  /**
   * Begins to follow a job of this computer.
   *
   * @param settings the folder of the user's settings, which say by which store this computer goes
   * @param hours of work, that a forecast reckons with
   */
  public static SetFollower begin(
      Path settings, Path job, DayHours hours, Clock clock, Listener listener) {
    var kept = new StudioSettings(settings);
    var folder = job.toAbsolutePath().normalize();
    var follower =
        new SetFollower(
            hint -> StoreVisit.open(kept, folder, hours, clock, hint), listener, ASK, LATER);
    follower.thread.start();
    return follower;
  }

  /** Starts it; for one that was made in another way than by {@link #begin}. */
  SetFollower started() {
    thread.start();
    return this;
  }

  /** Says that something was done to the job here, so that the store gets it at once. */
  public void changed() {
    news.release();
  }

  private void follow() {
    while (!closed) {
      try {
        visit();
      } catch (StoreException e) {
        if (!isAway && !closed) {
          isAway = true;
          listener.away(e);
        }
      } catch (IOException | JobException e) {
        // The folder cannot be read just now, which whoever has the job open says.
      }
      pause(later);
    }
  }

  private void visit() throws IOException, JobException {
    try (var visit = way.open(news::release).orElse(null)) {
      while (visit != null && !closed) {
        var exchanged = visit.exchange();
        if (isAway) {
          isAway = false;
          listener.reached();
        }
        if (exchanged.brought() > 0) {
          listener.brought();
        }
        if (!visit.told().equals(told)) {
          told = visit.told();
          listener.told(told);
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

  /** Ends it; what the store lacks then follows when the job is opened again. */
  @Override
  public void close() {
    closed = true;
    news.release();
  }
}
