package org.framewright.share;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.day.Forecast;
import org.framewright.job.Job;
import org.framewright.job.Standing;
import org.framewright.live.JobView;

/**
 * How the day goes, as far as it is reckoned and not counted.
 *
 * @param pace how long setups took lately; none where it is too early to tell
 * @param finish when the day's work is likely done; none where nobody can say
 * @param why why nobody can say; none where somebody can, or where nothing is left
 */
record DayNow(Optional<Duration> pace, Optional<Finish> finish, Optional<Text> why) {
  /** Nothing is known. */
  static final DayNow NONE = new DayNow(Optional.empty(), Optional.empty(), Optional.empty());

  /** The likely range of the finish. */
  record Finish(Instant from, Instant to) {}

  static DayNow of(Job job, JobView view, DayHours hours) {
    try {
      var standing = new Standing(view.tally(), view.state());
      var day = DaySummary.of(job, view.scan(), standing, hours);
      var ahead = day.today().orElse(day.all());
      var finish = ahead.earliest().flatMap(from -> ahead.latest().map(to -> new Finish(from, to)));
      return new DayNow(
          day.pace().recent(), finish, finish.isPresent() ? Optional.empty() : why(ahead));
    } catch (IOException e) {
      return NONE; // The folder is gone, which the page says by itself.
    }
  }

  private static Optional<Text> why(Forecast ahead) {
    if (ahead.setups() == 0) {
      return Optional.empty();
    }
    if (ahead.work().isEmpty()) {
      return Optional.of(Text.of("too early to tell"));
    }
    return ahead
        .whyNoRange()
        .or(() -> Optional.of(Text.of("no forecast beyond {0} days", DayHours.MOST_DAYS)));
  }
}
