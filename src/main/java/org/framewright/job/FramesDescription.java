package org.framewright.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.Camera;
import org.framewright.frames.CameraClock;
import org.framewright.frames.FrameScan;
import org.framewright.frames.ImplausibleClock;
import org.framewright.frames.SetupTally;
import org.framewright.frames.SlateDoubt;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.SlateSays;
import org.framewright.frames.SlateTally;

/** A job's frames as they were counted, in words, as the command line and the demo print them. */
public final class FramesDescription {
  private static final int MOST_LISTED = 20;
  private static final int MOST_ENDINGS = 6;

  private FramesDescription() {}

  /** The whole count: setups with what they lack, then what waits for a person, then clocks. */
  public static List<String> lines(Job job, Standing standing) {
    var tally = standing.tally();
    var lines = new ArrayList<String>();
    lines.add(
        PlainText.counted(tally.frames(), "frame")
            + clips(", ", tally.clips())
            + ", "
            + PlainText.counted(tally.files(), "file"));
    tally
        .bySetup()
        .forEach(
            (setup, counted) -> {
              lines.add(
                  "  "
                      + setup
                      + ": "
                      + counted.frames()
                      + views(counted)
                      + clips(", ", counted.clips()));
              missing(job, standing, setup).forEach(words -> lines.add("    missing " + words));
              if (standing.state().of(setup).changedSinceSignOff()) {
                lines.add("    changed since sign-off");
              }
            });
    if (!standing.state().pickups().isEmpty()) {
      lines.add("Pickups: " + String.join(", ", standing.state().pickups()));
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
    slates(job, tally.slates(), lines);
    list("Incomplete", tally.incomplete().stream().map(frame -> frame.stem()).toList(), lines);
    lines.addAll(clocks(standing));
    return List.copyOf(lines);
  }

  /** The count in one line: all, the setup on set, and what waits for a person. */
  public static String line(Job job, Standing standing) {
    var tally = standing.tally();
    var line = new StringBuilder(PlainText.counted(tally.frames(), "frame"));
    line.append(clips(", ", tally.clips()));
    standing
        .state()
        .onSet()
        .ifPresent(
            now -> {
              var counted = Optional.ofNullable(tally.bySetup().get(now.setup()));
              line.append("; on set ").append(now.setup()).append(": ");
              line.append(counted.map(SetupTally::frames).orElse(0));
              missing(job, standing, now.setup()).forEach(words -> line.append("; ").append(words));
            });
    tally.slates().doubts().stream()
        .filter(SlateDoubt::lasts)
        .forEach(doubt -> line.append("; ").append(doubt(doubt)));
    if (!tally.unassigned().isEmpty()) {
      line.append("; unassigned ").append(tally.unassigned().size());
    }
    if (!tally.incomplete().isEmpty()) {
      line.append("; incomplete ").append(tally.incomplete().size());
    }
    return line.toString();
  }

  /** Those that need a look come first. */
  private static void slates(Job job, SlateTally slates, List<String> into) {
    list(
        "Slates",
        slates.frames().stream()
            .sorted(Comparator.comparingInt(one -> rank(job, one)))
            .map(one -> one.frame().stem() + ": " + words(job, one))
            .toList(),
        into);
    list("In doubt", slates.doubts().stream().map(FramesDescription::doubt).toList(), into);
    slates.remarks().forEach(remark -> into.add("Order of frames: " + remark.english()));
  }

  private static int rank(Job job, SlateFrame slate) {
    return !(slate.slate().says() instanceof SlateSays.OfSetup) ? 0 : isLong(job, slate) ? 1 : 2;
  }

  /** More than twice what was wanted: a slate may have been forgotten or not read. */
  private static boolean isLong(Job job, SlateFrame slate) {
    int wanted = wanted(job, slate);
    return wanted > 0 && slate.frames() > 2 * wanted;
  }

  private static int wanted(Job job, SlateFrame slate) {
    return job.shotList()
        .setup(slate.slate().says().code())
        .flatMap(setup -> setup.wanted().stream().boxed().findFirst())
        .orElse(0);
  }

  private static String words(Job job, SlateFrame slate) {
    return switch (slate.slate().says()) {
      case SlateSays.OfSetup(var setup) ->
          setup
              + ", "
              + PlainText.counted(slate.frames(), "frame")
              + (isLong(job, slate)
                  ? ", " + wanted(job, slate) + " wanted: was a slate forgotten?"
                  : "");
      case SlateSays.Unlisted(var code) -> code + ", which is not in the list";
      case SlateSays.OfAnotherJob _ -> "of another job";
    };
  }

  private static String doubt(SlateDoubt doubt) {
    return doubt.said(UnaryOperator.identity()).english()
        + (doubt.frames() > 0 ? " (" + PlainText.counted(doubt.frames(), "frame") + ")" : "");
  }

  private static String clips(String before, int clips) {
    return clips == 0 ? "" : before + PlainText.counted(clips, "clip");
  }

  /** The bodies whose clocks are off, and how that was found. */
  public static List<String> clocks(Standing standing) {
    return Stream.concat(
            standing.tally().cameras().stream()
                .filter(CameraClock::isOff)
                .map(FramesDescription::clock),
            standing.tally().implausible().stream().map(FramesDescription::clock))
        .toList();
  }

  /**
   * That some files in the frames folder are neither frames nor of frames, by their endings: {@code
   * 6 files are not understood: .CRW, .MRW}. Empty where all are understood.
   */
  public static Optional<Problem> notUnderstood(FrameScan scan) {
    var files = scan.notUnderstood();
    if (files.isEmpty()) {
      return Optional.empty();
    }
    var counts = new TreeMap<String, Integer>();
    files.forEach(file -> counts.merge(file.ending(), 1, Integer::sum));
    var endings =
        counts.entrySet().stream()
            .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
            .map(entry -> entry.getKey().isEmpty() ? "without an ending" : entry.getKey())
            .limit(MOST_ENDINGS)
            .collect(Collectors.joining(", "));
    return Optional.of(
        new Problem(
            Text.counted(
                "{0} file is not understood: {1}",
                "{0} files are not understood: {1}",
                files.size(),
                endings + (counts.size() > MOST_ENDINGS ? " ..." : "")),
            "A frame in a format that is not known here may be among them; move away what is"
                + " none."));
  }

  /** The same with each such file and why, the first of them. */
  public static List<String> notUnderstood(Job job, FrameScan scan) {
    var lines = new ArrayList<String>();
    notUnderstood(scan)
        .ifPresent(
            problem -> {
              lines.add(problem.what());
              few(
                  scan.notUnderstood().stream()
                      .limit(MOST_LISTED + 1L)
                      .map(one -> job.folder().relativize(one.file()) + ": " + one.why())
                      .toList(),
                  scan.notUnderstood().size(),
                  lines);
            });
    return lines;
  }

  /** What a setup of the list still lacks; nothing where the list does not hold it. */
  public static List<String> missing(Job job, Standing standing, String setup) {
    return job.shotList().setup(setup).stream()
        .flatMap(found -> job.missing(found, standing.tally()).stream())
        .toList();
  }

  private static void list(String title, List<String> entries, List<String> into) {
    if (!entries.isEmpty()) {
      into.add(title + ": " + entries.size());
      few(entries, entries.size(), into);
    }
  }

  private static void few(List<String> entries, int all, List<String> into) {
    entries.stream().limit(MOST_LISTED).forEach(entry -> into.add("  " + entry));
    if (all > MOST_LISTED) {
      into.add("  and " + (all - MOST_LISTED) + " more");
    }
  }

  private static String views(SetupTally tally) {
    var views =
        tally.byView().entrySet().stream()
            .filter(entry -> !entry.getKey().isEmpty())
            .map(entry -> entry.getKey() + " " + entry.getValue())
            .collect(Collectors.joining(", "));
    return views.isEmpty() ? "" : " (" + views + ")";
  }

  private static String clock(CameraClock clock) {
    if (clock.isNeverSet()) {
      // Of years nobody wants to know the seconds.
      return "The clock of %s is %s (measured on %s): it was never set"
          .formatted(
              name(clock.camera()),
              clock.description(),
              PlainText.counted(clock.measuredOn(), "frame"));
    }
    return String.format(
        Locale.ROOT,
        "The clock of %s is %s (%.1f s, spread %.1f s, measured on %s)%s",
        name(clock.camera()),
        clock.description(),
        Math.abs(clock.offsetSeconds().orElseThrow()),
        clock.spreadSeconds().orElse(0),
        PlainText.counted(clock.measuredOn(), "frame"),
        clock.wholeHours().isPresent() ? ": its time zone or summer time is set wrongly" : "");
  }

  private static String clock(ImplausibleClock clock) {
    return "%s of %s %s %s: %s"
        .formatted(
            PlainText.counted(clock.frames(), "frame"),
            clock.camera().map(FramesDescription::name).orElse("an unknown body"),
            clock.frames() == 1 ? "is" : "are",
            clock.description(),
            clock.why());
  }

  private static String name(Camera camera) {
    return (camera.model() + " " + camera.serial()).strip();
  }
}
