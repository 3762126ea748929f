package org.framewright.studio;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import org.framewright.day.DayHours;
import org.framewright.day.TimeOnSet;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.SetupStatus;
import org.framewright.job.Standing;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * What was done in one job on each of its days. All days together are how the job stands: each
 * setup is planned for one day at most and done on one, and each frame is of one.
 *
 * @param setups by day; at {@link #NO_DAY} what belongs to none
 * @param frames by the day on which they were taken, or {@link #NO_DAY}
 */
record JobNumbers(
    SortedMap<LocalDate, SetupNumbers> setups, SortedMap<LocalDate, FrameNumbers> frames) {
  /** The day of what belongs to no day; the last one. */
  static final LocalDate NO_DAY = LocalDate.MAX;

  private static final int LAST_YEAR = 9999;

  JobNumbers {
    setups = Collections.unmodifiableSortedMap(new TreeMap<>(setups));
    frames = Collections.unmodifiableSortedMap(new TreeMap<>(frames));
  }

  /**
   * Those of a job now.
   *
   * @param hours of work, in which times on set and waits are reckoned
   */
  static JobNumbers of(Job job, FrameScan scan, Standing standing, DayHours hours) {
    return new JobNumbers(setups(job, standing, hours), frames(job, scan, standing));
  }

  private static SortedMap<LocalDate, SetupNumbers> setups(
      Job job, Standing standing, DayHours hours) {
    var state = standing.state();
    var finished = job.finished();
    var onSet = new HashMap<String, Duration>();
    TimeOnSet.of(state, hours, job.now()).forEach(one -> onSet.put(one.setup(), one.time()));
    var days = new TreeMap<LocalDate, SetupNumbers>();
    for (var setup : job.shotList().setups()) {
      var code = setup.code();
      var status = state.of(code);
      var since = day(job, status.since());
      switch (status.state()) {
        case SHOT, SIGNED_OFF ->
            add(
                days,
                day(job, Optional.ofNullable(finished.get(code))),
                SetupNumbers.ofDone(Optional.ofNullable(onSet.get(code))));
        case PICKUP -> add(days, since, SetupNumbers.ofPickup());
        case DROPPED -> add(days, since, SetupNumbers.ofDropped());
        case TO_SHOOT, ON_SET -> {}
      }
      if (status.state() == SetupState.SIGNED_OFF) {
        add(days, day(job, status.signedOffAt()), SetupNumbers.ofSignedOff(wait(status, hours)));
      }
    }
    plan(job, standing, days);
    return days;
  }

  /** Where the list has no days, all of it is planned for the first on which something was done. */
  private static void plan(Job job, Standing standing, SortedMap<LocalDate, SetupNumbers> days) {
    var setups = job.shotList().setups();
    boolean hasDays = setups.stream().anyMatch(setup -> planned(setup).isPresent());
    var instead = hasDays || days.isEmpty() ? NO_DAY : days.firstKey();
    for (var setup : setups) {
      if (standing.state().of(setup.code()).state() != SetupState.DROPPED) {
        add(days, planned(setup).orElse(instead), SetupNumbers.ofPlanned(1));
      }
    }
  }

  private static Optional<LocalDate> planned(Setup setup) {
    try {
      return setup.day().map(text -> LocalDate.parse(text.strip())).filter(JobNumbers::isDay);
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private static Optional<Duration> wait(SetupStatus status, DayHours hours) {
    return status
        .shotAt()
        .flatMap(shot -> status.signedOffAt().map(signed -> hours.between(shot, signed)));
  }

  private static SortedMap<LocalDate, FrameNumbers> frames(
      Job job, FrameScan scan, Standing standing) {
    var state = standing.state();
    boolean chosen = !state.selects().isEmpty();
    var days = new TreeMap<LocalDate, FrameNumbers>();
    var seen = new HashSet<FrameId>();
    for (var line : job.frameLines(scan, standing)) {
      var frame = line.frame();
      if (frame.complete() && seen.add(frame.id()) && line.slate().isEmpty() && !frame.isClip()) {
        var taken = line.taken().filter(at -> isDay(at.toLocalDate()));
        days.merge(
            taken.map(LocalDateTime::toLocalDate).orElse(NO_DAY),
            FrameNumbers.frame(
                taken,
                chosen ? OptionalInt.of(state.isSelect(frame) ? 1 : 0) : OptionalInt.empty()),
            FrameNumbers::plus);
      }
    }
    return days;
  }

  private static LocalDate day(Job job, Optional<Instant> time) {
    return time.map(at -> LocalDate.ofInstant(at, job.zone()))
        .filter(JobNumbers::isDay)
        .orElse(NO_DAY);
  }

  /** A list and a body may say anything. */
  private static boolean isDay(LocalDate day) {
    return day.getYear() >= 1 && day.getYear() <= LAST_YEAR;
  }

  private static void add(
      SortedMap<LocalDate, SetupNumbers> days, LocalDate day, SetupNumbers more) {
    days.merge(day, more, SetupNumbers::plus);
  }
}
