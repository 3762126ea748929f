package org.framewright.ui.board;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Optional;
import org.framewright.day.DaySummary;

/**
 * How fast the job goes, and when it will be done if it goes on so.
 *
 * @param perSetup the mean working time of a setup
 * @param finish when what is left will be done, on the set's own clock; none where nothing is left
 *     or it is too far off
 * @param endsToday whether that is still on this day
 */
record Outlook(Duration perSetup, Optional<LocalDateTime> finish, boolean endsToday) {

  /** What a summary says of it; nothing where it is too early to tell. */
  static Optional<Outlook> of(DaySummary summary) {
    var zone = summary.hours().zone();
    var today = summary.at().atZone(zone).toLocalDate();
    // Where the list has days, it is this day that people want to see the end of.
    var ahead = summary.today().filter(left -> left.setups() > 0).orElse(summary.all());
    var finish =
        ahead.finish().filter(_ -> ahead.setups() > 0).map(at -> LocalDateTime.ofInstant(at, zone));
    return summary
        .pace()
        .mean()
        .map(
            mean ->
                new Outlook(
                    mean, finish, finish.filter(at -> at.toLocalDate().equals(today)).isPresent()));
  }
}
