package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * When some setups will be done.
 *
 * @param setups how many are left
 * @param work the working time that they will take if the rest is like what was shot, by how much
 *     of each there is and with late times counting most; none where it is too early to tell
 * @param finish when that is; none without a pace, and none where the work takes more than {@link
 *     DayHours#MOST_DAYS} days
 * @param earliest where the likely range of the finish begins; none where nobody can say
 * @param latest where it ends
 * @param whyNoRange why nobody can say; none where somebody can, or where there is no finish
 * @param takt the time that each may take, to be done in the hours that are left of the day
 */
public record Forecast(
    int setups,
    Optional<Duration> work,
    Optional<Instant> finish,
    Optional<Instant> earliest,
    Optional<Instant> latest,
    Optional<Text> whyNoRange,
    Optional<Duration> takt) {
  private static final Text SCATTERED =
      Text.of("what was shot took too different times to tell how far that may be off");

  /** Of setups that are as large as those that were shot. */
  static Forecast of(int setups, Pace pace, DayHours hours, Instant now) {
    return of(Workload.alike(pace.times(), setups), pace, hours, now);
  }

  static Forecast of(Workload load, Pace pace, DayHours hours, Instant now) {
    int setups = load.left().size();
    var begin = DayHours.within(now);
    var end = begin.atZone(hours.zone()).with(hours.until()).toInstant();
    var takt = Pace.takt(hours.between(begin, end), setups);
    if (pace.tooEarly() || load.shot().isEmpty()) {
      var none = Optional.<Instant>empty();
      return new Forecast(setups, Optional.empty(), none, none, none, Optional.empty(), takt);
    }
    var estimate = load.estimate();
    var work = Pace.minutes(estimate.work());
    var finish = hours.after(begin, work);
    var why = finish.filter(_ -> setups > 0).flatMap(_ -> load.whyNoRange());
    var range = estimate.range().filter(_ -> finish.isPresent() && why.isEmpty());
    var latest = range.flatMap(one -> hours.after(begin, Pace.minutes(one.most())));
    var earliest =
        latest.flatMap(_ -> range).flatMap(one -> hours.after(begin, Pace.minutes(one.least())));
    boolean scattered = setups > 0 && finish.isPresent() && why.isEmpty() && latest.isEmpty();
    return new Forecast(
        setups,
        Optional.of(work),
        finish,
        earliest,
        latest,
        scattered ? Optional.of(SCATTERED) : why,
        takt);
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
}
