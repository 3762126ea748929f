package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.framewright.base.NameKey;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/**
 * Which frames are to be handed off, before anybody looks whether they can be.
 *
 * @param chosenBy how they were chosen, such as {@code rated 4 or higher}
 * @param withheld lines of a list that name no frame, or several
 */
record Selection(String chosenBy, List<Frame> frames, List<Withheld> withheld) {
  private static final int LARGEST_LIST = 8 << 20;
  private static final int LONGEST_LINE = 200;
  private static final int MOST_UNKNOWN = 1000;
  private static final int MOST_NAMED = 5;

  Selection {
    frames = List.copyOf(frames);
    withheld = List.copyOf(withheld);
  }

  static Selection rated(Job job, FrameScan scan, int atLeast) {
    return new Selection(
        "rated " + atLeast + " or higher",
        scan.distinct().stream()
            .filter(frame -> frame.capture().rating().orElse(0) >= atLeast)
            .toList(),
        List.of());
  }

  static Selection chosen(Job job, FrameScan scan) {
    // Two copies of one frame are one select.
    var seen = new HashSet<FrameId>();
    return new Selection(
        "chosen in the job",
        job.selects(scan).stream().filter(frame -> seen.add(frame.id())).toList(),
        List.of());
  }

  static Selection picked(Job job, FrameScan scan, Path picks) throws IOException, JobException {
    var bytes =
        BoundedFile.read(picks, LARGEST_LIST)
            .orElseThrow(
                () ->
                    new JobException(
                        "this is larger than any list of picks",
                        picks.toString(),
                        "Give a text file with a name a line."));
    var byName = byName(job, scan);
    var frames = new LinkedHashSet<Frame>();
    var withheld = new ArrayList<Withheld>();
    for (var line : BoundedFile.lines(bytes)) {
      var name = name(line, picks);
      if (name.isEmpty()) {
        continue;
      }
      var found = byName.getOrDefault(canonicalKey(name), Set.of());
      if (found.size() == 1) {
        frames.addAll(found);
      } else {
        withheld.add(notOne(job, picks.getFileName() + ", line " + line.number(), name, found));
        if (withheld.size() > MOST_UNKNOWN) {
          throw new JobException(
              "more than " + MOST_UNKNOWN + " lines of this list name no frame of the job",
              picks.toString(),
              "Check that it is the list of picks of this job.");
        }
      }
    }
    return new Selection("picked in " + picks.getFileName(), List.copyOf(frames), withheld);
  }

  private static String name(BoundedFile.Line line, Path picks) throws JobException {
    return line.text()
        .orElseThrow(
            () ->
                new JobException(
                    "this list of picks is not UTF-8 text",
                    picks + ", line " + line.number(),
                    "Save it as plain text in UTF-8, a name a line."))
        .replace("\uFEFF", "")
        .strip();
  }

  private static Withheld notOne(Job job, String where, String name, Set<Frame> found) {
    var pick = where + ": " + shortened(name);
    if (found.isEmpty()) {
      return new Withheld(
          pick,
          "no frame of the job has this name",
          "Check the spelling; a rename since the list was made changes names too.");
    }
    return new Withheld(
        pick,
        "several frames have this name: "
            + found.stream()
                .limit(MOST_NAMED)
                .map(frame -> FramePaths.original(job, frame))
                .collect(Collectors.joining(", "))
            + (found.size() > MOST_NAMED ? " and others" : ""),
        "Write it with its folder, as shown here.");
  }

  private static String shortened(String name) {
    return name.length() <= LONGEST_LINE ? name : name.substring(0, LONGEST_LINE) + " ...";
  }

  private static Map<String, Set<Frame>> byName(Job job, FrameScan scan) {
    var byName = new HashMap<String, Set<Frame>>();
    for (var frame : scan.frames()) {
      for (var name : names(job, frame)) {
        byName.computeIfAbsent(name, _ -> new LinkedHashSet<>()).add(frame);
      }
    }
    return byName;
  }

  /** What a list may call a frame. */
  private static Set<String> names(Job job, Frame frame) {
    var names = new LinkedHashSet<String>();
    names.add(canonicalKey(frame.stem()));
    names.add(canonicalKey(FramePaths.original(job, frame)));
    for (var file : frame.files()) {
      names.add(canonicalKey(file.path().getFileName().toString()));
      names.add(canonicalKey(FramePaths.below(job, file.path())));
    }
    return names;
  }

  private static String canonicalKey(String name) {
    return NameKey.of(name.replace('\\', '/'));
  }
}
