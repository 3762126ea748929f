package org.framewright.cli;

import java.io.File;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.framewright.base.Problem;
import org.framewright.frames.CameraClock;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Missing;
import org.framewright.frames.SetupTally;
import org.framewright.frames.Tally;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.naming.Reserved;

/** A job's frames as they were counted, in words and as JSON. */
record FramesReport(Job job, FrameScan scan, Tally tally, JobState state) {
  /** An error of a body's clock that people should know of, in seconds. */
  private static final double WORTH_REPORTING = 5;

  private static final int MOST_LISTED = 20;

  static FramesReport of(Job job, FrameScan scan) {
    var standing = job.standing(scan);
    return new FramesReport(job, scan, standing.tally(), standing.state());
  }

  /** Whether frames wait for a person: they belong to no setup, or are not whole. */
  boolean needsAPerson() {
    return !tally.unassigned().isEmpty() || !tally.incomplete().isEmpty();
  }

  /** The count as a whole. */
  List<String> lines() {
    var lines = new ArrayList<String>();
    lines.add(counted(tally.frames(), "frame") + ", " + counted(tally.files(), "file"));
    tally
        .bySetup()
        .forEach(
            (setup, counted) -> {
              lines.add("  " + setup + ": " + counted.frames() + views(counted));
              missing(setup, Optional.of(counted))
                  .forEach(words -> lines.add("    missing " + words));
              if (state.of(setup).changedSinceSignOff()) {
                lines.add("    changed since sign-off");
              }
            });
    if (!state.pickups().isEmpty()) {
      lines.add("Pickups: " + String.join(", ", state.pickups()));
    }
    list(
        "Unassigned",
        tally.unassigned().stream()
            .map(
                one ->
                    one.frame().stem()
                        + ": "
                        + one.why()
                        + one.likely().map(setup -> "; likely " + setup).orElse(""))
            .toList(),
        lines);
    list("Incomplete", tally.incomplete().stream().map(frame -> frame.stem()).toList(), lines);
    tally.cameras().stream().flatMap(clock -> clock(clock).stream()).forEach(lines::add);
    return lines;
  }

  private static void list(String title, List<String> entries, List<String> into) {
    if (!entries.isEmpty()) {
      into.add(title + ": " + entries.size());
      entries.stream().limit(MOST_LISTED).forEach(entry -> into.add("  " + entry));
      rest(entries.size()).ifPresent(more -> into.add("  " + more));
    }
  }

  private static Optional<String> rest(int size) {
    return size > MOST_LISTED
        ? Optional.of("and " + (size - MOST_LISTED) + " more")
        : Optional.empty();
  }

  /** What is wrong with files and folders, the first of it. */
  List<String> problems() {
    var lines = new ArrayList<String>();
    scan.problems().stream()
        .limit(MOST_LISTED)
        .forEach(
            problem -> lines.add(shown(problem.where()) + ": " + problem.what() + remedy(problem)));
    rest(scan.problems().size()).ifPresent(lines::add);
    return lines;
  }

  /** What keeps the frames folder itself from being read. */
  List<String> problemsOfFolder() {
    return scan.problems().stream()
        .filter(problem -> problem.where().equals(job.framesFolder().toString()))
        .map(problem -> problem.sentence() + remedy(problem))
        .toList();
  }

  private static String remedy(Problem problem) {
    return problem.remedy().isEmpty() ? "" : ". " + problem.remedy();
  }

  private String shown(String where) {
    var inside = job.folder() + File.separator;
    return where.startsWith(inside) ? where.substring(inside.length()) : where;
  }

  /** The count in one line: all, the setup on set, and what waits for a person. */
  String line() {
    var line = new StringBuilder(counted(tally.frames(), "frame"));
    state
        .onSet()
        .ifPresent(
            now -> {
              var counted = Optional.ofNullable(tally.bySetup().get(now.setup()));
              line.append("; on set ").append(now.setup()).append(": ");
              line.append(counted.map(SetupTally::frames).orElse(0));
              missing(now.setup(), counted).forEach(words -> line.append("; ").append(words));
            });
    if (!tally.unassigned().isEmpty()) {
      line.append("; unassigned ").append(tally.unassigned().size());
    }
    if (!tally.incomplete().isEmpty()) {
      line.append("; incomplete ").append(tally.incomplete().size());
    }
    return line.toString();
  }

  private static String views(SetupTally tally) {
    var views =
        tally.byView().entrySet().stream()
            .filter(entry -> !entry.getKey().isEmpty())
            .map(entry -> entry.getKey() + " " + entry.getValue())
            .collect(Collectors.joining(", "));
    return views.isEmpty() ? "" : " (" + views + ")";
  }

  private static Optional<String> clock(CameraClock clock) {
    if (clock.offsetSeconds().isEmpty()
        || Math.abs(clock.offsetSeconds().getAsDouble()) < WORTH_REPORTING) {
      return Optional.empty();
    }
    double seconds = clock.offsetSeconds().getAsDouble();
    var body = clock.camera().model() + " " + clock.camera().serial();
    var zone =
        clock.wholeHours().isPresent()
            ? ", which is whole hours: its time zone or summer time is set wrongly"
            : "";
    return Optional.of(
        String.format(
            Locale.ROOT,
            "%s: its clock is %.1f s %s (spread %.1f s, measured on %s)%s",
            body.strip(),
            Math.abs(seconds),
            seconds > 0 ? "behind" : "ahead",
            clock.spreadSeconds().orElse(0),
            counted(clock.measuredOn(), "frame"),
            zone));
  }

  private List<String> missing(String setup, Optional<SetupTally> counted) {
    return job.shotList().setup(setup).stream()
        .flatMap(found -> Missing.of(found, counted).stream())
        .map(missing -> missing.words(this::viewName))
        .toList();
  }

  private String viewName(String code) {
    var field = job.convention().fields().get(Reserved.VIEW);
    return field == null ? code : field.choices().getOrDefault(code, code);
  }

  /** All of it. */
  Map<String, Object> json() {
    var document = new LinkedHashMap<String, Object>();
    document.put("frames", tally.frames());
    document.put("files", tally.files());
    document.put("unassigned", tally.unassigned().size());
    document.put("incomplete", tally.incomplete().size());
    var bySetup = new LinkedHashMap<String, Object>();
    tally
        .bySetup()
        .forEach(
            (setup, counted) -> {
              var one = new LinkedHashMap<String, Object>();
              one.put("frames", counted.frames());
              one.put("byView", counted.byView());
              one.put("missing", missing(setup, Optional.of(counted)));
              one.put("changedSinceSignOff", state.of(setup).changedSinceSignOff());
              bySetup.put(setup, one);
            });
    document.put("bySetup", bySetup);
    document.put("cameras", tally.cameras().stream().map(FramesReport::json).toList());
    document.put("pickups", state.pickups());
    document.put(
        "unassignedFrames",
        tally.unassigned().stream()
            .map(
                one -> {
                  var frame = new LinkedHashMap<String, Object>();
                  frame.put("frame", one.frame().stem());
                  frame.put("likely", one.likely().orElse(null));
                  frame.put("why", one.why());
                  return frame;
                })
            .toList());
    document.put(
        "incompleteFrames", tally.incomplete().stream().map(frame -> frame.stem()).toList());
    document.put(
        "troubles",
        scan.problems().stream()
            .map(
                problem ->
                    Map.of(
                        "path",
                        shown(problem.where()),
                        "message",
                        problem.what(),
                        "remedy",
                        problem.remedy()))
            .toList());
    return document;
  }

  private static Map<String, Object> json(CameraClock clock) {
    var camera = new LinkedHashMap<String, Object>();
    camera.put("make", clock.camera().make());
    camera.put("model", clock.camera().model());
    camera.put("serial", clock.camera().serial());
    camera.put("frames", clock.frames());
    camera.put("clockOffsetSeconds", orNull(clock.offsetSeconds()));
    camera.put("clockSpreadSeconds", orNull(clock.spreadSeconds()));
    camera.put("measuredOn", clock.measuredOn());
    camera.put("wholeHours", clock.wholeHours().isPresent() ? clock.wholeHours().getAsInt() : null);
    return camera;
  }

  private static Double orNull(OptionalDouble value) {
    return value.isPresent() ? Math.round(value.getAsDouble() * 1000) / 1000.0 : null;
  }

  static String counted(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }
}
