package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * When some setups will be done.
 *
 * @param setups how many are left
 * @param work the working time that they will take at the job's pace; none where it is too early to
 *     tell
 * @param margin how far that may be off; none for fewer than five setups shot
 * @param finish when that is; none without a pace, and none where the work takes more than {@link
 *     DayHours#MOST_DAYS} days
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
    var begin = DayHours.within(now);
    var end = begin.atZone(hours.zone()).with(hours.until()).toInstant();
    return new Forecast(
        setups,
        work,
        margin,
        work.flatMap(time -> hours.after(begin, time)),
        margin.flatMap(off -> hours.after(begin, positive(work.orElseThrow().minus(off)))),
        margin.flatMap(off -> hours.after(begin, work.orElseThrow().plus(off))),
        Pace.takt(hours.between(begin, end), setups));
  }

  /** Why nobody can say when they will be done, in words; none where somebody can. */
  public Optional<String> noForecast() {
    if (setups == 0 || finish.isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        work.isEmpty()
            ? "too early to tell"
            : "no forecast beyond %d days".formatted(DayHours.MOST_DAYS));
  }

  private static Duration positive(Duration time) {
    return time.isNegative() ? Duration.ZERO : time;
  }
}
