package org.framewright.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Tally;

/** Gathers what each sign-off was about. */
final class SignOffs {
  private SignOffs() {}

  static List<SignOff> of(
      Fold fold, FrameScan scan, Tally tally, FrameTimes times, LogProofs proofs) {
    var bySetup = new HashMap<String, List<Frame>>();
    scan.distinct().stream()
        .filter(frame -> frame.complete() && !frame.isClip())
        .sorted(Comparator.comparing(times::order).thenComparing(Frame::stem))
        .forEach(
            frame ->
                tally
                    .place(frame)
                    .ifPresent(
                        place ->
                            bySetup
                                .computeIfAbsent(place.setup(), _ -> new ArrayList<>())
                                .add(frame)));
    var since = new SinceSignOff(fold.state(), times);
    var signOffs = new ArrayList<SignOff>();
    for (var setup : fold.list().setups()) {
      var status = fold.state().of(setup.code());
      if (status.signedOffBy().isEmpty() || status.signedOffAt().isEmpty()) {
        continue;
      }
      var by = status.signedOffBy().get();
      var at = status.signedOffAt().get();
      var all = bySetup.getOrDefault(setup.code(), List.of());
      var then =
          all.stream()
              .filter(frame -> !since.came(frame, tally.place(frame).orElseThrow(), at))
              .toList();
      signOffs.add(
          new SignOff(
              setup, by, at, then, all.size() - then.size(), proofs.signOff(setup.code(), by, at)));
    }
    signOffs.sort(Comparator.comparing(SignOff::at));
    return List.copyOf(signOffs);
  }
}
