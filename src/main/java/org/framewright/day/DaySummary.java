package org.framewright.day;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SequencedMap;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.frames.FrameScan;
import org.framewright.frames.SetupTally;
import org.framewright.frames.Tally;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.job.Standing;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * How the job stands at one moment.
 *
 * @param at the moment, within the years 1 to 9998
 * @param hours the hours that the forecast reckons with
 * @param setups how many setups are in each state; states without any are left out
 * @param frames complete frames
 * @param unassigned of which no setup claims these
 * @param pace how long setups took
 * @param today what is left of the setups that the list plans for this day, pickups with them; none
 *     where the list has no days
 * @param all what is left of the whole job
 * @param kinds how long each kind of setup took, where the list says kinds; those first of which
 *     most is left
 * @param space the disk
 * @param attention what a person should look at, a sentence each; of very many the first
 */
public record DaySummary(
    Instant at,
    DayHours hours,
    SequencedMap<SetupState, Integer> setups,
    int frames,
    int unassigned,
    Pace pace,
    Optional<Forecast> today,
    Forecast all,
    List<KindPace> kinds,
    Space space,
    List<Text> attention) {
  public DaySummary {
    setups = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(setups));
    kinds = List.copyOf(kinds);
    attention = List.copyOf(attention);
  }

  /** The summary of a job now, from a scan of its frames and where it stands with them. */
  public static DaySummary of(Job job, FrameScan scan, Standing standing, DayHours hours)
      throws IOException {
    var now = DayHours.within(job.now());
    var tally = standing.tally();
    var state = standing.state();
    var counts = new EnumMap<SetupState, Integer>(SetupState.class);
    for (var setup : job.shotList().setups()) {
      counts.merge(state.of(setup.code()).state(), 1, Integer::sum);
    }
    var progress = SoFar.of(job, state, hours);
    var left = progress.left();
    var load = progress.load(left);
    var pace = progress.pace();
    var ahead = today(job, state, left, LocalDate.ofInstant(now, hours.zone()));
    return new DaySummary(
        now,
        hours,
        new LinkedHashMap<>(counts),
        tally.frames(),
        tally.unassigned().size(),
        pace,
        ahead.map(setups -> Forecast.of(progress.load(setups), pace, hours, now)),
        Forecast.of(load, pace, hours, now),
        KindPace.of(load.shot(), load.left()),
        space(job, scan, tally, left),
        Attention.shortened(
            Attention.said(
                Attention.of(job.shotList(), state, tally), PlainText::line, job::viewLabel)));
  }

  private static Optional<List<Setup>> today(
      Job job, JobState state, List<Setup> left, LocalDate today) {
    var days = new HashMap<String, LocalDate>();
    for (var setup : job.shotList().setups()) {
      setup.day().flatMap(DaySummary::date).ifPresent(day -> days.put(setup.code(), day));
    }
    if (days.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        left.stream()
            .filter(
                setup -> {
                  var is = state.of(setup.code()).state();
                  var day = days.get(setup.code());
                  return is == SetupState.PICKUP
                      || is == SetupState.ON_SET
                      || (day != null && !day.isAfter(today));
                })
            .toList());
  }

  private static Optional<LocalDate> date(String text) {
    try {
      return Optional.of(LocalDate.parse(text.strip()));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private static Space space(Job job, FrameScan scan, Tally tally, List<Setup> left)
      throws IOException {
    long used =
        scan.distinct().stream()
            .filter(frame -> frame.complete() && !frame.isClip())
            .flatMap(frame -> frame.files().stream())
            .mapToLong(file -> file.size())
            .sum();
    return new Space(
        used,
        tally.frames(),
        planned(tally, left),
        Files.getFileStore(job.framesFolder()).getUsableSpace());
  }

  /** The frames that the list still wants; a setup without a number gets the mean of the others. */
  private static OptionalLong planned(Tally tally, List<Setup> left) {
    var shot =
        tally.bySetup().values().stream()
            .mapToInt(SetupTally::frames)
            .filter(frames -> frames > 0)
            .average();
    long planned = 0;
    for (var setup : left) {
      var counted = tally.bySetup().get(setup.code());
      int have = counted == null ? 0 : counted.frames();
      if (setup.wanted().isPresent()) {
        planned += Math.max(0, setup.wanted().getAsInt() - have);
      } else if (shot.isPresent()) {
        planned += Math.max(0, Math.round(shot.getAsDouble()) - have);
      } else {
        return OptionalLong.empty();
      }
    }
    return OptionalLong.of(planned);
  }
}
