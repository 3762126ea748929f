package org.framewright.live;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Tally;

/** Picks the frames of each setup that came last. */
final class LatestFrames {
  private record Dated(Frame frame, Instant arrived, LocalDateTime captured) {}

  /**
   * Those seen to arrive come after those that were there before; then by capture, then by name.
   */
  private static final Comparator<Dated> OLDEST_FIRST =
      Comparator.comparing(Dated::arrived)
          .thenComparing(Dated::captured)
          .thenComparing(dated -> dated.frame().stem());

  private LatestFrames() {}

  static Map<String, List<Frame>> of(FrameScan scan, Tally tally, Map<FrameId, Instant> arrivals) {
    var bySetup = new HashMap<String, List<Dated>>();
    for (var frame : scan.distinct()) {
      var place = frame.complete() ? tally.places().get(frame.id()) : null;
      if (place != null) {
        bySetup
            .computeIfAbsent(place.setup(), _ -> new ArrayList<>())
            .add(
                new Dated(
                    frame,
                    arrivals.getOrDefault(frame.id(), Instant.EPOCH),
                    frame.capture().time().orElse(LocalDateTime.MIN)));
      }
    }
    var latest = new HashMap<String, List<Frame>>();
    bySetup.forEach(
        (setup, frames) -> {
          frames.sort(OLDEST_FIRST.reversed());
          latest.put(setup, frames.stream().limit(JobView.LATEST).map(Dated::frame).toList());
        });
    return Map.copyOf(latest);
  }
}
