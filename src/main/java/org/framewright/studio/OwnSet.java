package org.framewright.studio;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.framewright.base.Text;
import org.framewright.copies.FramesOnce;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.JobMirror;
import org.framewright.job.Station;
import org.framewright.live.LiveJob;

/**
 * A set of this computer: its job folder is kept like the store, and the store is told how it
 * stands. For one thread.
 */
public final class OwnSet {
  /** How a set stands changes with the time alone, so it is told this often at least. */
  private static final Duration TELL = Duration.ofMinutes(1);

  /** Nobody reads faster, and counting frames takes its time. */
  private static final Duration SOONEST = Duration.ofSeconds(2);

  private final Store store;
  private final UUID id;
  private final JobMirror mirror;
  private final Job job;
  private final Sight sight;
  private final DayHours hours;
  private final Clock clock;
  private final SearchRows search;
  private final NumbersRows numbers;
  private final FramesOnce.Counter copies;
  private final SetMoves moves;
  private Instant told = Instant.EPOCH;
  private long toldOf = -1;

  private OwnSet(
      Store store, UUID id, JobMirror mirror, Job job, Sight sight, DayHours hours, Clock clock) {
    this.store = store;
    this.id = id;
    this.mirror = mirror;
    this.job = job;
    this.sight = sight;
    this.hours = hours;
    this.clock = clock;
    this.search = new SearchRows(store, id);
    this.numbers = new NumbersRows(store, id, hours);
    this.copies = new FramesOnce.Counter(job);
    this.moves = new SetMoves(new StoredMoves(store), id, job, mirror);
  }

  /**
   * What the store calls a job: it comes of what tells the job from every other one, so each copy
   * of a job's folder is the same set.
   */
  public static UUID id(Job job) {
    return UUID.nameUUIDFromBytes(job.identity().getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Opens a job of this computer, and adds it to the store if it is not there yet.
   *
   * @param hours of work, that a forecast reckons with
   */
  public static OwnSet open(Store store, Path folder, DayHours hours, Clock clock)
      throws IOException, JobException {
    return open(store, folder, hours, clock, Station.here());
  }

  static OwnSet open(Store store, Path folder, DayHours hours, Clock clock, Station station)
      throws IOException, JobException {
    var job = Job.open(folder, clock, station);
    return of(store, job, new FolderSight(job), hours, clock);
  }

  /** The same with a job that is open and followed, so that nothing is read twice. */
  static OwnSet of(Store store, LiveJob live, DayHours hours, Clock clock) throws IOException {
    return of(store, live.job(), new LiveSight(live), hours, clock);
  }

  private static OwnSet of(Store store, Job job, Sight sight, DayHours hours, Clock clock)
      throws IOException {
    var id = id(job);
    var station = new Station(job.station());
    var mirror = JobMirror.of(job.folder(), clock, station, store.logs(id));
    store.add(id, job.name(), job.convention().yaml());
    return new OwnSet(store, id, mirror, job, sight, hours, clock);
  }

  /** The open job. */
  public Job job() {
    return job;
  }

  public UUID id() {
    return id;
  }

  /**
   * Sends and brings what is new, carries out moves of setups from set to set, and tells the store
   * how the set stands, where that changed.
   *
   * @throws IOException if the store is not reached or the folder cannot be read; the next time
   *     catches up
   */
  public JobMirror.Exchanged follow() throws IOException {
    var exchanged = moves.follow();
    var now = clock.instant();
    long revision = sight.revision();
    if (!now.isBefore(told.plus(revision == toldOf ? TELL : SOONEST))) {
      long events = job.events();
      var seen = sight.now();
      var standing = seen.standing();
      var day = DaySummary.of(job, seen.scan(), standing, hours);
      tell(events, SetNow.of(job, standing.state(), day, mirror.told(), copies.of(seen.scan())));
      search.tell(job, seen.scan(), standing);
      numbers.tell(job, seen.scan(), standing);
      toldOf = revision;
      told = now;
    }
    return exchanged;
  }

  /** What a person should know of the exchange that ended last. */
  List<Text> told() {
    return mirror.told();
  }

  private void tell(long events, SetNow set) throws IOException {
    store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement("select framewright.tell(?, ?, ?, ?::jsonb)")) {
            statement.setObject(1, id);
            statement.setLong(2, events);
            statement.setString(3, job.station());
            statement.setString(4, set.json());
            statement.execute();
            return true;
          }
        });
  }
}
