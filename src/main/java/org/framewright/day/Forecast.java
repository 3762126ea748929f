package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * When some setups will be done.
 *
 * @param setups how many are left
 * @param work the working time that they will take at the job's pace
 * @param margin how far that may be off; none for fewer than five setups shot
 * @param finish when that is
 * @param earliest the finish if the margin is on the good side
 * @param latest the finish if it is on the bad side
 * @param takt the time that each may take, to be done in the hours that are left of the day
 */
public record Forecast(
    int setups,
    Optional<Duration> work,
    Optional<Duration> margin,
    Optional<Instant> finish,
    Optional<Instant> earliest,
    Optional<Instant> latest,
    Optional<Duration> takt) {

  static Forecast of(int setups, Pace pace, DayHours hours, Instant now) {
    var work = pace.forecast(setups);
    var margin = pace.margin(setups);
    var end = now.atZone(hours.zone()).with(hours.until()).toInstant();
    return new Forecast(
        setups,
        work,
        margin,
        work.map(time -> hours.after(now, time)),
        margin.map(off -> hours.after(now, positive(work.orElseThrow().minus(off)))),
        margin.map(off -> hours.after(now, work.orElseThrow().plus(off))),
        Pace.takt(hours.between(now, end), setups));
  }

  private static Duration positive(Duration time) {
    return time.isNegative() ? Duration.ZERO : time;
  }
}
