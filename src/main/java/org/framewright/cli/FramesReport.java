package org.framewright.cli;

import java.io.File;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.copies.CopiesDescription;
import org.framewright.copies.FramesOnce;
import org.framewright.frames.Camera;
import org.framewright.frames.CameraClock;
import org.framewright.frames.FrameScan;
import org.framewright.frames.ImplausibleClock;
import org.framewright.frames.SlateDoubt;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.SlateSays;
import org.framewright.job.FramesDescription;
import org.framewright.job.Job;
import org.framewright.job.Standing;

/** A job's frames as they were counted, in words and as JSON. */
record FramesReport(Job job, FrameScan scan, Standing standing, Optional<FramesOnce> inOnePlace) {
  private static final int MOST_LISTED = 20;

  static FramesReport of(Job job, FrameScan scan) {
    return of(job, scan, new FramesOnce.Counter(job));
  }

  /** The same for one count of many. */
  static FramesReport of(Job job, FrameScan scan, FramesOnce.Counter once) {
    return new FramesReport(job, scan, job.standing(scan), once.of(scan));
  }

  /**
   * Says on standard error that there are files which are not understood.
   *
   * @param so what that means for them, such as {@code They are not handed off}
   */
  static void remarkOnNotUnderstood(FrameScan scan, String so, Output output) {
    FramesDescription.notUnderstood(scan)
        .ifPresent(
            problem ->
                output
                    .err()
                    .println(problem.what() + ". " + so + "; framewright frames JOB says why."));
  }

  /** Whether frames wait for a person: they belong to no setup, or are not whole. */
  boolean needsAPerson() {
    var tally = standing.tally();
    return !tally.unassigned().isEmpty()
        || !tally.incomplete().isEmpty()
        || !tally.slates().doubts().isEmpty();
  }

  /** The count as a whole. */
  List<String> lines() {
    var lines = new ArrayList<>(FramesDescription.lines(job, standing));
    inOnePlace.ifPresent(once -> lines.add(CopiesDescription.line(once, ZoneId.systemDefault())));
    lines.addAll(FramesDescription.notUnderstood(job, scan));
    return lines;
  }

  /** What is wrong with files and folders, the first of it. */
  List<String> problems() {
    var lines = new ArrayList<String>();
    scan.problems().stream()
        .limit(MOST_LISTED)
        .map(one -> new Problem(one.what(), shown(one.where()), one.remedy()).sentences())
        .forEach(lines::add);
    if (scan.problems().size() > MOST_LISTED) {
      lines.add("and " + (scan.problems().size() - MOST_LISTED) + " more");
    }
    return lines;
  }

  /** What keeps the frames folder itself from being read. */
  List<String> problemsOfFolder() {
    return scan.problems().stream()
        .filter(problem -> problem.where().equals(job.framesFolder().toString()))
        .map(Problem::sentences)
        .toList();
  }

  private String shown(String where) {
    var inside = job.folder() + File.separator;
    return where.startsWith(inside) ? where.substring(inside.length()) : where;
  }

  /** The count in one line. */
  String line() {
    var others = scan.notUnderstood().size();
    return FramesDescription.line(job, standing)
        + (others == 0 ? "" : "; not understood " + others);
  }

  /** All of it. */
  Map<String, Object> json() {
    var tally = standing.tally();
    var document = new LinkedHashMap<String, Object>();
    document.put("frames", tally.frames());
    document.put("clips", tally.clips());
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
              one.put("clips", counted.clips());
              one.put("byView", counted.byView());
              one.put("missing", FramesDescription.missing(job, standing, setup));
              one.put("changedSinceSignOff", standing.state().of(setup).changedSinceSignOff());
              bySetup.put(setup, one);
            });
    document.put("bySetup", bySetup);
    document.put("cameras", tally.cameras().stream().map(FramesReport::json).toList());
    document.put("inOnePlace", inOnePlace.map(CopiesCommand::json).orElse(null));
    document.put("pickups", standing.state().pickups());
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
    document.put(
        "notUnderstood",
        scan.notUnderstood().stream()
            .map(one -> Map.of("file", shown(one.file().toString()), "why", one.why()))
            .toList());
    document.put(
        "implausibleClocks", tally.implausible().stream().map(FramesReport::json).toList());
    document.put("slates", tally.slates().frames().stream().map(FramesReport::json).toList());
    document.put("slateDoubts", tally.slates().doubts().stream().map(FramesReport::json).toList());
    document.put("orderRemarks", tally.slates().remarks().stream().map(Text::english).toList());
    return document;
  }

  private static Map<String, Object> json(SlateFrame slate) {
    var document = new LinkedHashMap<String, Object>();
    document.put("frame", slate.frame().stem());
    document.put("code", slate.slate().says().code());
    document.put(
        "of",
        switch (slate.slate().says()) {
          case SlateSays.OfSetup _ -> "setup";
          case SlateSays.Unlisted _ -> "unlisted";
          case SlateSays.OfAnotherJob _ -> "another-job";
        });
    document.put("frames", slate.frames());
    document.put("byPerson", slate.slate().byPerson());
    document.put("before", slate.slate().backwards());
    document.put("ruling", slate.slate().ruling().name().toLowerCase(Locale.ROOT));
    return document;
  }

  private static Map<String, Object> json(SlateDoubt doubt) {
    var document = new LinkedHashMap<String, Object>();
    document.put("slate", doubt.frame().stem());
    document.put("says", doubt.says().code());
    document.put("onSet", doubt.onSet());
    document.put("frames", doubt.frames());
    document.put("lasts", doubt.lasts());
    return document;
  }

  private static Map<String, Object> json(ImplausibleClock clock) {
    var document = new LinkedHashMap<String, Object>();
    document.put("model", clock.camera().map(Camera::model).orElse(null));
    document.put("serial", clock.camera().map(Camera::serial).orElse(null));
    document.put("frames", clock.frames());
    document.put("off", clock.description());
    document.put("why", clock.why());
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
}
