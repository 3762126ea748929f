package org.framewright.job;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.framewright.base.Durations;
import org.framewright.base.Text;

/**
 * A station's clock, which goes by that of another station where it was found to be ahead, but
 * never by more than {@link #TRUSTED_AHEAD}: an event that is dated later than that keeps its place
 * in the order, and so does what is done after it was seen, but time does not follow it.
 */
final class StationClock {
  /**
   * How far the clock of another station may be ahead and still be gone by. A clock that is further
   * off has a wrong month or year. Common practice, no source.
   */
  static final Duration TRUSTED_AHEAD = Duration.ofDays(30);

  /** What an event may be stamped: the years that ISO 8601 writes with four digits. */
  static final Instant FIRST = Instant.EPOCH;

  static final Instant LAST = Instant.parse("9999-12-31T23:59:59.999Z");

  /** Nobody's clock shows this or later; stamps before it always leave room for the next one. */
  private static final long ORDINARY = Instant.parse("9000-01-01T00:00:00Z").toEpochMilli();

  /** A difference of clocks below this is mentioned to nobody. */
  private static final Duration WORTH_MENTIONING = Duration.ofSeconds(5);

  private static final int MOST_MENTIONED = 20;

  private final Clock clock;
  private final Map<String, Duration> ahead = new TreeMap<>();
  private Stamp latest = new Stamp(0, 0, "");
  private Stamp latestOrdinary = latest;
  private volatile long aheadMillis;

  StationClock(Clock clock) {
    this.clock = clock;
  }

  /** The job's time. */
  Instant now() {
    return Instant.ofEpochMilli(legal(clock.millis()) + aheadMillis);
  }

  /** What this station's own clock shows. */
  Instant own() {
    return legal(clock.instant());
  }

  /** A time that an event may have, as near as can be. */
  static Instant legal(Instant time) {
    return time.isBefore(FIRST) ? FIRST : time.isAfter(LAST) ? LAST : time;
  }

  private static long legal(long millis) {
    return Math.clamp(millis, FIRST.toEpochMilli(), LAST.toEpochMilli());
  }

  /** An event was read. */
  void saw(Entry entry) {
    var stamp = entry.stamp();
    latest = later(latest, stamp);
    if (stamp.millis() < ORDINARY) {
      latestOrdinary = later(latestOrdinary, stamp);
    }
    long ours = legal(clock.millis());
    long by = stamp.millis() - ours;
    if (by <= TRUSTED_AHEAD.toMillis()) {
      aheadMillis = Math.max(aheadMillis, by);
    }
    // What took a stamp over from another event counts on from it; what it began itself, it dated.
    boolean dated = stamp.count() == 0;
    var most =
        by > TRUSTED_AHEAD.toMillis() && dated
            ? Duration.ofMillis(by)
            : Duration.between(Instant.ofEpochMilli(ours), entry.at());
    if (most.compareTo(WORTH_MENTIONING) > 0) {
      ahead.merge(stamp.station(), most, (one, other) -> one.compareTo(other) > 0 ? one : other);
    }
  }

  private static Stamp later(Stamp one, Stamp other) {
    return one.compareTo(other) > 0 ? one : other;
  }

  /**
   * A stamp after all that were seen; behind the very last one that can be written there is none,
   * and it comes after all that a clock may have made.
   */
  Stamp next(String station) {
    return next(latest, station).or(() -> next(latestOrdinary, station)).orElseThrow();
  }

  private Optional<Stamp> next(Stamp before, String station) {
    long physical = Math.min(now().toEpochMilli(), LAST.toEpochMilli());
    if (physical > before.millis()) {
      return Optional.of(new Stamp(physical, 0, station));
    }
    if (before.count() < Integer.MAX_VALUE) {
      return Optional.of(new Stamp(before.millis(), before.count() + 1, station));
    }
    return before.millis() < LAST.toEpochMilli()
        ? Optional.of(new Stamp(before.millis() + 1, 0, station))
        : Optional.empty();
  }

  /** What a person should know of the clocks, where this station is the one of this name. */
  void describe(String own, List<Text> warnings) {
    ahead.entrySet().stream()
        .limit(MOST_MENTIONED)
        .map(one -> description(one.getKey(), one.getKey().equals(own), one.getValue()))
        .forEach(warnings::add);
    if (ahead.size() > MOST_MENTIONED) {
      warnings.add(
          Text.of(
              "The clocks of {0} more stations are ahead of this computer's.",
              ahead.size() - MOST_MENTIONED));
    }
  }

  private static Text description(String station, boolean own, Duration by) {
    var off =
        own
            ? Text.of("This computer's clock was set back by {0}", Durations.said(by))
            : Text.of(
                "The clock of {0} is {1} ahead of this computer's", station, Durations.said(by));
    return by.compareTo(TRUSTED_AHEAD) <= 0
        ? Text.of(
            "{0}; the job goes by the later one. Let all computers set their clocks from the"
                + " network.",
            off)
        : Text.of(
            "{0}; what was done there is kept in its order, but the job's time does not follow more"
                + " than {1} days. Let all computers set their clocks from the network.",
            off, TRUSTED_AHEAD.toDays());
  }
}
