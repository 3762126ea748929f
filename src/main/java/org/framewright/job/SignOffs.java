package org.framewright.job;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameMove;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.Tally;

/** Gathers what each sign-off was about, as it was then. */
final class SignOffs {
  private final Fold fold;
  private final Tally tally;
  private final Unmoved unmoved;
  private final FrameTimes times;

  /** The pictures in the order in which they were taken. */
  private final List<Frame> frames;

  private final Map<FrameId, List<FrameMove>> moves = new HashMap<>();

  /**
   * Where frames would be had nobody moved any.
   *
   * @param byNames where names say it, by them
   * @param byTimes by when they came and were taken alone
   */
  record Unmoved(Tally byNames, Tally byTimes) {}

  private SignOffs(Fold fold, FrameScan scan, Tally tally, Unmoved unmoved, FrameTimes times) {
    this.fold = fold;
    this.tally = tally;
    this.unmoved = unmoved;
    this.times = times;
    this.frames =
        scan.distinct().stream()
            .filter(frame -> frame.complete() && !frame.isClip())
            .sorted(Comparator.comparing(times::order).thenComparing(Frame::stem))
            .toList();
    fold.state()
        .moves()
        .forEach(move -> moves.computeIfAbsent(move.frame(), _ -> new ArrayList<>()).add(move));
  }

  static List<SignOff> of(
      Fold fold, FrameScan scan, Tally tally, Unmoved unmoved, FrameTimes times, LogProofs proofs) {
    var all = new SignOffs(fold, scan, tally, unmoved, times);
    var there = new HashSet<FrameId>();
    scan.frames().forEach(frame -> there.addAll(frame.knownAs()));
    var signOffs = new ArrayList<SignOff>();
    for (var setup : fold.list().setups()) {
      var status = fold.state().of(setup.code());
      if (status.signedOffBy().isEmpty() || status.signedOffAt().isEmpty()) {
        continue;
      }
      var by = status.signedOffBy().get();
      var at = status.signedOffAt().get();
      var then = all.then(setup.code(), at);
      var now = all.now(setup.code());
      signOffs.add(
          new SignOff(
              setup,
              by,
              at,
              then,
              without(now, then),
              without(then, now),
              (int) then.stream().filter(frame -> times.seen(frame).isEmpty()).count(),
              all.notThere(setup.code(), at, there),
              proofs.signOff(setup.code(), by, at)));
    }
    signOffs.sort(Comparator.comparing(SignOff::at));
    return List.copyOf(signOffs);
  }

  private static int without(List<Frame> frames, List<Frame> others) {
    var ids = new HashSet<FrameId>();
    others.forEach(frame -> ids.add(frame.id()));
    return (int) frames.stream().filter(frame -> !ids.contains(frame.id())).count();
  }

  private List<Frame> now(String setup) {
    return frames.stream().filter(frame -> isAt(tally.place(frame), setup)).toList();
  }

  /** The frames that a setup had at a time, as far as anybody knows. */
  private List<Frame> then(String setup, Instant at) {
    return frames.stream()
        .filter(frame -> !times.seen(frame).filter(at::isBefore).isPresent())
        .filter(frame -> isAt(placeAt(frame, at), setup))
        .toList();
  }

  private static boolean isAt(Optional<Place> place, String setup) {
    return place.filter(one -> one.setup().equals(setup)).isPresent();
  }

  /** Where a frame was at a time. */
  private Optional<Place> placeAt(Frame frame, Instant at) {
    var its =
        frame.knownAs().stream()
            .flatMap(id -> moves.getOrDefault(id, List.of()).stream())
            .sorted(Comparator.comparing(FrameMove::at))
            .toList();
    if (its.isEmpty()) {
      return tally.place(frame);
    }
    var before = its.stream().filter(move -> !move.at().isAfter(at)).toList();
    if (!before.isEmpty()) {
      return Optional.of(new Place(before.getLast().setup(), before.getLast().view()));
    }
    var named = unmoved.byNames().place(frame);
    // It was moved, and then renamed as a frame of that setup: its name tells of the move.
    boolean renamed = isAt(named, its.getLast().setup());
    return renamed ? unmoved.byTimes().place(frame).or(() -> named) : named;
  }

  /** Frames that came while a setup was on set, and that no file is any more. */
  private int notThere(String setup, Instant at, Set<FrameId> there) {
    var spans = fold.state().spans().stream().filter(span -> span.setup().equals(setup)).toList();
    return (int)
        fold.state().arrivals().entrySet().stream()
            .filter(one -> !there.contains(one.getKey()) && !moves.containsKey(one.getKey()))
            .map(Map.Entry::getValue)
            .filter(time -> !time.isAfter(at))
            .filter(
                time ->
                    spans.stream()
                        .anyMatch(
                            span ->
                                !time.isBefore(span.from())
                                    && span.until().map(time::isBefore).orElse(true)))
            .count();
  }
}
