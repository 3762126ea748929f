package org.framewright.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.frames.CameraClock;
import org.framewright.frames.SetupTally;

/** A job's frames as they were counted, in words, as the command line and the demo print them. */
public final class FramesDescription {
  private static final int MOST_LISTED = 20;

  private FramesDescription() {}

  /** The whole count: setups with what they lack, then what waits for a person, then clocks. */
  public static List<String> lines(Job job, Standing standing) {
    var tally = standing.tally();
    var lines = new ArrayList<String>();
    lines.add(
        PlainText.counted(tally.frames(), "frame")
            + ", "
            + PlainText.counted(tally.files(), "file"));
    tally
        .bySetup()
        .forEach(
            (setup, counted) -> {
              lines.add("  " + setup + ": " + counted.frames() + views(counted));
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
    list("Incomplete", tally.incomplete().stream().map(frame -> frame.stem()).toList(), lines);
    lines.addAll(clocks(standing));
    return List.copyOf(lines);
  }

  /** The count in one line: all, the setup on set, and what waits for a person. */
  public static String line(Job job, Standing standing) {
    var tally = standing.tally();
    var line = new StringBuilder(PlainText.counted(tally.frames(), "frame"));
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
    if (!tally.unassigned().isEmpty()) {
      line.append("; unassigned ").append(tally.unassigned().size());
    }
    if (!tally.incomplete().isEmpty()) {
      line.append("; incomplete ").append(tally.incomplete().size());
    }
    return line.toString();
  }

  /** The bodies whose clocks are off, and how that was found. */
  public static List<String> clocks(Standing standing) {
    return standing.tally().cameras().stream()
        .filter(CameraClock::isOff)
        .map(FramesDescription::clock)
        .toList();
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
      entries.stream().limit(MOST_LISTED).forEach(entry -> into.add("  " + entry));
      if (entries.size() > MOST_LISTED) {
        into.add("  and " + (entries.size() - MOST_LISTED) + " more");
      }
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
    return String.format(
        Locale.ROOT,
        "The clock of %s is %s (%.1f s, spread %.1f s, measured on %s)%s",
        (clock.camera().model() + " " + clock.camera().serial()).strip(),
        clock.description(),
        Math.abs(clock.offsetSeconds().orElseThrow()),
        clock.spreadSeconds().orElse(0),
        PlainText.counted(clock.measuredOn(), "frame"),
        clock.wholeHours().isPresent() ? ": its time zone or summer time is set wrongly" : "");
  }
}
