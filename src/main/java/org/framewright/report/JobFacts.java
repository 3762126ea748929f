package org.framewright.report;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.copies.FramesOnce;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.day.SetupTimes;
import org.framewright.day.TimeOnSet;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.job.Comment;
import org.framewright.job.Job;
import org.framewright.job.SignOff;
import org.framewright.job.Standing;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * What a job knows at one moment.
 *
 * @param onSet how long each setup took that is done, the latest last
 * @param day the day that the report is about: the last on which something was done
 * @param finished when each setup that is done came to be, in the order of time
 * @param frames the complete pictures in the order in which they were taken, each once
 * @param comments what people said of setups and frames, in the order in which they did
 */
record JobFacts(
    Job job,
    Standing standing,
    DaySummary summary,
    SetupTimes setupTimes,
    List<TimeOnSet> onSet,
    Optional<FramesOnce> once,
    LocalDate day,
    SequencedMap<String, Instant> finished,
    List<SignOff> signOffs,
    List<Picture> frames,
    int clips,
    List<Comment> comments) {

  /**
   * A frame of which there is a picture.
   *
   * @param place the setup and view that it belongs to; none if it belongs to none yet
   * @param day on which it was taken, where that is known
   */
  record Picture(
      Frame frame,
      Optional<Place> place,
      Optional<LocalDate> day,
      OptionalInt rating,
      boolean chosen) {
    /** Its file's name, without the ending, as its path from the frames folder. */
    String name(Job job) {
      return JobFacts.name(job, frame);
    }
  }

  static JobFacts of(Job job, FrameScan scan, DayHours hours) throws IOException {
    var standing = job.standing(scan);
    var state = standing.state();
    var finished = job.finished();
    var signOffs = job.signOffs(scan);
    var frames = new ArrayList<Picture>();
    int clips = 0;
    var seen = new HashSet<FrameId>();
    for (var line : job.frameLines(scan)) {
      var frame = line.frame();
      if (!frame.complete() || !seen.add(frame.id())) {
        continue;
      }
      if (line.slate().isPresent()) {
        continue;
      }
      if (frame.isClip()) {
        clips++;
        continue;
      }
      frames.add(
          new Picture(
              frame,
              line.place(),
              line.taken().map(taken -> taken.toLocalDate()),
              line.rating(),
              state.isSelect(frame)));
    }
    var summary = DaySummary.of(job, scan, standing, hours);
    return new JobFacts(
        job,
        standing,
        summary,
        SetupTimes.of(job, state, hours),
        TimeOnSet.of(state, hours, summary.at()),
        FramesOnce.of(job, scan),
        day(job, finished, signOffs, summary.at()),
        finished,
        signOffs,
        List.copyOf(frames),
        clips,
        job.comments());
  }

  private static LocalDate day(
      Job job, Map<String, Instant> finished, List<SignOff> signOffs, Instant now) {
    return Stream.of(
            finished.values().stream(),
            signOffs.stream().map(SignOff::at),
            job.state().spans().stream().map(span -> span.from()))
        .flatMap(times -> times)
        .filter(time -> !time.isAfter(now))
        .max(Instant::compareTo)
        .orElse(now)
        .atZone(job.zone())
        .toLocalDate();
  }

  /** Two bodies may both have an {@code IMG_0001}; their folders tell them apart. */
  static String name(Job job, Frame frame) {
    return job.framesFolder()
        .relativize(frame.folder().resolve(frame.stem()))
        .toString()
        .replace('\\', '/');
  }

  ZoneId zone() {
    return job.zone();
  }

  Instant now() {
    return summary.at();
  }

  List<Setup> setups() {
    return job.shotList().setups();
  }

  /** Whether the report's day is the one that it is now. */
  boolean isToday() {
    return day.equals(LocalDate.ofInstant(now(), zone()));
  }

  boolean isOnDay(Instant time) {
    return day.equals(LocalDate.ofInstant(time, zone()));
  }

  SetupState state(Setup setup) {
    return standing.state().of(setup.code()).state();
  }

  int count(SetupState state) {
    return summary.setups().getOrDefault(state, 0);
  }

  /** Setups that count: all but the dropped ones. */
  int wanted() {
    return setups().size() - count(SetupState.DROPPED);
  }

  int done() {
    return count(SetupState.SHOT) + count(SetupState.SIGNED_OFF);
  }

  /** The setups that came to be done on the report's day, in that order. */
  SequencedMap<Setup, Instant> finishedOnDay() {
    var byCode = new LinkedHashMap<String, Setup>();
    setups().forEach(setup -> byCode.put(setup.code(), setup));
    var today = new LinkedHashMap<Setup, Instant>();
    finished.forEach(
        (code, time) -> {
          if (isOnDay(time) && byCode.containsKey(code)) {
            today.put(byCode.get(code), time);
          }
        });
    return today;
  }

  /** The pictures of each setup that has any, in the list's order; last those of none. */
  SequencedMap<Optional<Setup>, List<Picture>> bySetup() {
    var grouped =
        frames.stream().collect(Collectors.groupingBy(one -> one.place().map(Place::setup)));
    var ordered = new LinkedHashMap<Optional<Setup>, List<Picture>>();
    for (var setup : setups()) {
      var its = grouped.remove(Optional.of(setup.code()));
      if (its != null) {
        ordered.put(Optional.of(setup), its);
      }
    }
    var rest = grouped.values().stream().flatMap(List::stream).toList();
    if (!rest.isEmpty()) {
      ordered.put(Optional.empty(), rest);
    }
    return ordered;
  }

  /** What was said of a setup and its frames, in the order in which it was. */
  List<Comment> comments(Setup setup) {
    return comments.stream().filter(comment -> comment.isOf(setup)).toList();
  }

  /** The picture that a comment is about; nothing where it is about the setup. */
  Optional<Picture> picture(Comment comment) {
    return frames.stream().filter(one -> comment.isOf(one.frame())).findFirst();
  }

  int frames(Setup setup) {
    var tally = standing.tally().bySetup().get(setup.code());
    return tally == null ? 0 : tally.frames();
  }

  /** The counts of a setup's views: {@code F 8, B 4}. */
  String views(Setup setup) {
    var tally = standing.tally().bySetup().get(setup.code());
    return tally == null
        ? ""
        : tally.byView().entrySet().stream()
            .filter(view -> !view.getKey().isEmpty())
            .map(view -> view.getKey() + "\u00a0" + view.getValue())
            .collect(Collectors.joining(", "));
  }
}
