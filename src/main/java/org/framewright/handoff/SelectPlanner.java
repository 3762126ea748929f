package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.framewright.base.Problem;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Tally;
import org.framewright.job.FrameNames;
import org.framewright.job.Job;

/** Decides which of the chosen frames can go, and under which names. */
final class SelectPlanner {
  private final Job job;
  private final Tally tally;
  private final SelectNames names;

  /** The files whose name is not yet what the convention says. */
  private final Set<Path> unnamed;

  private final Map<String, FrameNames.LeftOut> leftOut;
  private final EarlierHandOffs earlier;
  private final boolean onlyNew;

  SelectPlanner(Job job, FrameScan scan, Tally tally, Extent extent) throws IOException {
    this.job = job;
    this.tally = tally;
    this.onlyNew = extent.onlyNew();
    var records = HandOffRecords.of(job).read();
    this.names = new SelectNames(job, records.names());
    this.earlier = EarlierHandOffs.of(records.usable().values());
    var frameNames = job.frameNames(scan);
    this.unnamed =
        frameNames.requests().stream()
            .filter(request -> !request.from().equals(request.to()))
            .map(request -> job.folder().resolve(request.from()).normalize())
            .collect(Collectors.toSet());
    this.leftOut =
        frameNames.leftOut().stream()
            .collect(
                Collectors.toMap(
                    left -> FramePaths.original(job, left.frame()), left -> left, (one, _) -> one));
  }

  HandOffPlan plan(Selection selection) {
    var selects = new ArrayList<Select>();
    var withheld = new ArrayList<>(selection.withheld());
    var taken =
        new TakenNames(
            "Check the convention: its select names leave out what tells these frames apart.");
    var before = new TreeMap<String, Integer>();
    for (var frame : selection.frames()) {
      switch (naming(frame)) {
        case SelectNames.Named(Select select) -> {
          var number = earlier.last(select);
          number.ifPresent(last -> before.put(select.name(), last));
          if (onlyNew && number.isPresent()) {
            continue;
          }
          var clash = taken.take(select);
          if (clash.isEmpty()) {
            selects.add(select);
          } else {
            withheld.add(clash.get());
          }
        }
        case SelectNames.Unnameable(Withheld why) -> withheld.add(why);
      }
    }
    selects.sort(Comparator.comparing(Select::name));
    return new HandOffPlan(selection.chosenBy(), selects, withheld, before);
  }

  private SelectNames.Naming naming(Frame frame) {
    var original = FramePaths.original(job, frame);
    if (!frame.complete()) {
      return unnameable(
          original,
          "it is not complete: a file is cut short or still being written",
          "Wait until it is written, or copy it from the card again.",
          Withheld.Tool.NONE);
    }
    var left = leftOut.get(original);
    if (left != null) {
      return new SelectNames.Unnameable(
          new Withheld(new Problem(left.said(), original, left.fix()), Withheld.Tool.NONE));
    }
    if (tally.slates().of(frame).isPresent()) {
      return unnameable(
          original,
          "it is a slate, which is not handed off",
          "Leave it out; if it is none, say so with --slate-counts on the command line.",
          Withheld.Tool.NONE);
    }
    var place = tally.place(frame);
    if (place.isEmpty()) {
      return unnameable(
          original,
          "no setup claims it",
          "Move it to its setup first, then rename the frames.",
          Withheld.Tool.RENAMING);
    }
    if (frame.files().stream().anyMatch(file -> unnamed.contains(file.path().normalize()))) {
      return unnameable(
          original,
          "it does not have its name by the convention yet",
          "Rename the frames first.",
          Withheld.Tool.RENAMING);
    }
    return names.of(frame, original, place.get());
  }

  private static SelectNames.Naming unnameable(
      String original, String why, String remedy, Withheld.Tool tool) {
    return new SelectNames.Unnameable(new Withheld(original, why, remedy, tool));
  }
}
