package org.framewright.day;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.frames.FrameScan;
import org.framewright.frames.OnSetSpan;
import org.framewright.frames.SetupTally;
import org.framewright.frames.Tally;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.job.Standing;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.View;

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
 * @param attention what a person should look at, a sentence each
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
    List<String> attention) {
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
    var left = new ArrayList<Setup>();
    var byCode = new HashMap<String, Setup>();
    for (var setup : job.shotList().setups()) {
      byCode.put(setup.code(), setup);
      var at = state.of(setup.code()).state();
      counts.merge(at, 1, Integer::sum);
      if (!at.done()) {
        left.add(setup);
      }
    }
    var times = times(state, hours, now);
    var pace = new Pace(List.copyOf(times.values()));
    var sizes =
        Sizes.of(
            Stream.concat(times.keySet().stream().map(byCode::get), left.stream())
                .filter(Objects::nonNull)
                .toList());
    var shot = shot(times, byCode, sizes);
    var ahead = today(job, state, left, LocalDate.ofInstant(now, hours.zone()));
    return new DaySummary(
        now,
        hours,
        new LinkedHashMap<>(counts),
        tally.frames(),
        tally.unassigned().size(),
        pace,
        ahead.map(setups -> Forecast.of(load(shot, setups, sizes), pace, hours, now)),
        Forecast.of(load(shot, left, sizes), pace, hours, now),
        KindPace.of(shot, left.stream().map(sizes::of).toList()),
        space(job, scan, tally, left),
        attention(job, state, tally));
  }

  /**
   * The working time of each setup that was shot: from the moment it came on set until the next one
   * did, or until it left when it was the day's last. A setup that was on set again has all of its
   * times.
   */
  static SequencedMap<String, Duration> times(JobState state, DayHours hours, Instant now) {
    var spans = state.spans();
    var bySetup = new LinkedHashMap<String, Duration>();
    for (int i = 0; i < spans.size(); i++) {
      var span = spans.get(i);
      var until = span.until().orElse(now);
      if (i + 1 < spans.size() && sameDay(span, spans.get(i + 1), hours)) {
        until = spans.get(i + 1).from();
      } else {
        var ticked = state.of(span.setup()).since().orElse(until);
        until = ticked.isAfter(span.from()) && ticked.isBefore(until) ? ticked : until;
      }
      var time = hours.between(span.from(), until);
      // Kept in the order in which setups were last on set.
      var before = bySetup.remove(span.setup());
      bySetup.put(span.setup(), before == null ? time : before.plus(time));
    }
    bySetup
        .keySet()
        .removeIf(
            setup -> {
              var is = state.of(setup).state();
              return is != SetupState.SHOT && is != SetupState.SIGNED_OFF;
            });
    return bySetup;
  }

  private static List<Workload.Shot> shot(
      SequencedMap<String, Duration> times, Map<String, Setup> byCode, Sizes sizes) {
    var shot = new ArrayList<Workload.Shot>();
    times.forEach(
        (code, time) -> {
          var setup = byCode.get(code);
          if (setup != null) {
            shot.add(new Workload.Shot(sizes.of(setup), time));
          }
        });
    return shot;
  }

  private static Workload load(List<Workload.Shot> shot, List<Setup> left, Sizes sizes) {
    return new Workload(shot, left.stream().map(sizes::of).toList());
  }

  private static boolean sameDay(OnSetSpan one, OnSetSpan next, DayHours hours) {
    return LocalDate.ofInstant(one.from(), hours.zone())
        .equals(LocalDate.ofInstant(next.from(), hours.zone()));
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

  /** In words; what lacks a view is one sentence. */
  private static List<String> attention(Job job, JobState state, Tally tally) {
    var setups = new ArrayList<String>();
    var missing = new ArrayList<String>();
    var rest = new ArrayList<String>();
    for (var one : Attention.of(job.shotList(), state, tally)) {
      switch (one) {
        case Attention.Pickup(var setup, var reason) ->
            setups.add(setup.code() + " is to be shot again" + because(reason));
        case Attention.Dropped(var setup, var reason) ->
            setups.add(setup.code() + " was dropped" + because(reason));
        case Attention.Changed(var setup) ->
            setups.add(setup.code() + " got frames after its sign-off");
        case Attention.ViewsMissing(var setup, var views) ->
            missing.add(
                views.stream()
                    .map(View::code)
                    .collect(Collectors.joining(" ", setup.code() + " (", ")")));
        case Attention.Unassigned(int frames) ->
            rest.add(frames + " frames belong to no setup yet");
        case Attention.Incomplete(int frames) -> rest.add(frames + " frames are not complete");
        case Attention.ClockOff(var clock) ->
            rest.add("the clock of " + clock.camera().model() + " is " + clock.description());
        case Attention.Implausible(var clock) ->
            rest.add(
                "frames of %s are %s: %s"
                    .formatted(
                        clock.camera().map(camera -> camera.model()).orElse("an unknown body"),
                        clock.description(),
                        clock.why()));
      }
    }
    if (!missing.isEmpty()) {
      setups.add("a wanted view has no frame: " + String.join(", ", missing));
    }
    setups.addAll(rest);
    return setups;
  }

  private static String because(Optional<String> reason) {
    return reason.map(why -> ": " + why).orElse("");
  }
}
