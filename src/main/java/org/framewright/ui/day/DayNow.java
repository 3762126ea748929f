package org.framewright.ui.day;

import java.io.IOException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.framewright.copies.FramesOnce;
import org.framewright.day.Attention;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.day.PowerSource;
import org.framewright.day.Supplies;
import org.framewright.day.TimeOnSet;
import org.framewright.job.Job;
import org.framewright.job.Standing;
import org.framewright.live.JobView;
import org.framewright.shotlist.Setup;

/**
 * What the day knows at one moment.
 *
 * @param finished when each setup was finished that was on this day
 * @param times how long each setup took, the latest last
 * @param once the frames that are in one place only; none where no comparison was ever made
 * @param supplies how long disks and battery last
 */
record DayNow(
    JobView view,
    DaySummary summary,
    List<Attention> attention,
    List<LocalTime> finished,
    List<TimeOnSet> times,
    Optional<FramesOnce> once,
    Supplies supplies) {

  /** Reads it again and again, in the background, one at a time. */
  static final class Reader {
    private final Job job;
    private final FramesOnce.Counter copies;
    private final Supplier<DayHours> hours;
    private final Supplier<List<Supplies.Disk>> disks;
    private final PowerSource power;

    /**
     * @param disks those besides the one that frames arrive on
     */
    Reader(
        Job job, Supplier<DayHours> hours, Supplier<List<Supplies.Disk>> disks, PowerSource power) {
      this.job = job;
      this.copies = new FramesOnce.Counter(job);
      this.hours = hours;
      this.disks = disks;
      this.power = power;
    }

    DayNow read(JobView view) throws IOException {
      var worked = hours.get();
      var summary =
          DaySummary.of(job, view.scan(), new Standing(view.tally(), view.state()), worked);
      var today = LocalDate.ofInstant(summary.at(), worked.zone());
      var listed = new HashSet<String>();
      view.list().setups().stream().map(Setup::code).forEach(listed::add);
      var finished =
          job.finished().entrySet().stream()
              .filter(one -> listed.contains(one.getKey()))
              .map(one -> one.getValue().atZone(worked.zone()))
              .filter(time -> time.toLocalDate().equals(today))
              .map(time -> time.toLocalTime())
              .toList();
      return new DayNow(
          view,
          summary,
          Attention.of(view.list(), view.state(), view.tally()),
          finished,
          TimeOnSet.of(view.state(), worked, summary.at()),
          copies.of(view.scan()),
          Supplies.of(job, view.scan(), worked.zone(), disks.get(), power));
    }
  }
}
