package org.framewright.studio;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.job.JobMirror;
import org.framewright.live.LiveJob;

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

  /**
   * An exchange with the store.
   *
   * @param told what a person should know of it
   */
  record Exchange(JobMirror.Exchanged exchanged, List<Text> told) {}

  /** How long to wait where there is no store, or it is away. */
  private static final Duration LATER = Duration.ofSeconds(15);

  private final StoreRounds<Exchange> rounds;

  SetFollower(StoreRounds.Way<Exchange> way, Listener listener, Duration ask, Duration later) {
    this.rounds = new StoreRounds<>("studio", way, new Hearing(listener), ask, later);
  }

  /**
   * Begins to follow an open job.
   *
   * @param settings the folder of the user's settings, which say by which store this computer goes
   * @param hours of work, that a forecast reckons with
   */
  public static SetFollower begin(
      Path settings, LiveJob job, DayHours hours, Clock clock, Listener listener) {
    var kept = new StudioSettings(settings);
    return new SetFollower(
            hint -> StoreVisit.open(kept, job, hours, clock, hint),
            listener,
            StoreRounds.ASK,
            LATER)
        .started();
  }

  /** Starts it; for one that was made in another way than by {@link #begin}. */
  SetFollower started() {
    rounds.begin();
    return this;
  }

  /** Says that something was done to the job here, so that the store gets it at once. */
  public void changed() {
    rounds.news();
  }

  /** Tells what became other; touched by the thread only. */
  private static final class Hearing implements StoreRounds.Listener<Exchange> {
    private final Listener listener;
    private boolean isAway;
    private List<Text> told = List.of();

    Hearing(Listener listener) {
      this.listener = listener;
    }

    @Override
    public void answered(Exchange exchange) {
      if (isAway) {
        isAway = false;
        listener.reached();
      }
      if (exchange.exchanged().brought() > 0) {
        listener.brought();
      }
      if (!exchange.told().equals(told)) {
        told = exchange.told();
        listener.told(told);
      }
    }

    /** That the folder cannot be read just now says whoever has the job open. */
    @Override
    public void failed(Exception why) {
      if (!isAway && why instanceof StoreException away) {
        isAway = true;
        listener.away(away);
      }
    }
  }

  /** Ends it; what the store lacks then follows when the job is opened again. */
  @Override
  public void close() {
    rounds.close();
  }
}
