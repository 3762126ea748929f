package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.framewright.base.Problem;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.SlateSays;
import org.framewright.frames.Tally;
import org.framewright.job.FrameNames;
import org.framewright.job.Job;

/** Decides which of the chosen frames can go, and under which names. */
final class SelectPlanner {
  private static final Comparator<SlateFrame> BY_NAME =
      Comparator.comparing((SlateFrame one) -> one.frame().stem())
          .thenComparing(one -> one.frame().folder());

  private final Job job;
  private final Tally tally;
  private final SelectNames names;

  /** The files whose name is not yet what the convention says. */
  private final Set<Path> unnamed;

  private final Map<String, FrameNames.LeftOut> leftOut;
  private final EarlierHandOffs earlier;
  private final Extent extent;
  private final Map<FrameId, SlateFrame> slates = new HashMap<>();

  SelectPlanner(Job job, FrameScan scan, Tally tally, Extent extent) throws IOException {
    this.job = job;
    this.tally = tally;
    this.extent = extent;
    tally.slates().frames().forEach(one -> slates.put(one.frame().id(), one));
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
    var gathered = new Gathered(new ArrayList<>(selection.withheld()));
    selection.frames().forEach(frame -> add(frame, gathered));
    if (extent.slates()) {
      addSlates(selection.frames(), gathered);
    }
    gathered.selects.sort(Comparator.comparing(Select::name));
    return new HandOffPlan(
        selection.chosenBy(), gathered.selects, gathered.withheld, gathered.before);
  }

  /** A plan while it is made. */
  private static final class Gathered {
    private final List<Select> selects = new ArrayList<>();
    private final List<Withheld> withheld;
    private final TreeMap<String, Integer> before = new TreeMap<>();
    private final TakenNames taken =
        new TakenNames(
            "Check the convention: its select names leave out what tells these frames apart.");

    Gathered(List<Withheld> withheld) {
      this.withheld = withheld;
    }
  }

  private void add(Frame frame, Gathered gathered) {
    switch (naming(frame)) {
      case SelectNames.Named(Select select) -> {
        var number = earlier.last(select);
        number.ifPresent(last -> gathered.before.put(select.name(), last));
        if (extent.onlyNew() && number.isPresent()) {
          return;
        }
        gathered
            .taken
            .take(select)
            .ifPresentOrElse(gathered.withheld::add, () -> gathered.selects.add(select));
      }
      case SelectNames.Unnameable(Withheld why) -> gathered.withheld.add(why);
    }
  }

  /** The slates of the setups of which frames go, but those that were chosen themselves. */
  private void addSlates(List<Frame> chosen, Gathered gathered) {
    var setups =
        gathered.selects.stream().map(select -> select.place().setup()).collect(Collectors.toSet());
    var there = chosen.stream().map(Frame::id).collect(Collectors.toSet());
    for (var slate : slates.values().stream().sorted(BY_NAME).toList()) {
      if (there.contains(slate.frame().id())
          || !(slate.slate().says() instanceof SlateSays.OfSetup(var setup))
          || !setups.contains(setup)) {
        continue;
      }
      extent
          .pictures()
          .of(slate.frame())
          .ifPresentOrElse(
              frame -> add(frame, gathered),
              () ->
                  gathered.withheld.add(
                      new Withheld(
                          FramePaths.original(job, slate.frame()),
                          extent.pictures().missing(),
                          "Hand off all its pictures, or leave the slates out.")));
    }
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
    var slate = slates.get(frame.id());
    if (slate != null && !extent.slates()) {
      return unnameable(
          original,
          "it is a slate, which is not handed off",
          "Hand off the slates, too, or leave it out; if it is none, say so first.",
          Withheld.Tool.NONE);
    }
    if (slate != null && !(slate.slate().says() instanceof SlateSays.OfSetup)) {
      return unnameable(
          original,
          "it is a slate of no setup of the list",
          "Leave it out, or say which setup it is the slate of.",
          Withheld.Tool.NONE);
    }
    var place = tally.place(frame);
    if (place.isEmpty() && slate == null) {
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
    return slate == null
        ? names.of(frame, original, place.orElseThrow())
        : names.ofSlate(frame, original, slate.slate().says().code());
  }

  private static SelectNames.Naming unnameable(
      String original, String why, String remedy, Withheld.Tool tool) {
    return new SelectNames.Unnameable(new Withheld(original, why, remedy, tool));
  }
}
