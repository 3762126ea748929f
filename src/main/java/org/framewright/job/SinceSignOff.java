package org.framewright.job;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameMove;
import org.framewright.frames.Place;

/** Tells which frames a setup got after a time: they came, or people moved them there. */
final class SinceSignOff {
  private final FrameTimes times;
  private final Map<FrameId, FrameMove> moved = new HashMap<>();

  SinceSignOff(JobState state, FrameTimes times) {
    this.times = times;
    state.moves().forEach(move -> moved.put(move.frame(), move));
  }

  /** Whether a frame came to its place after a time. */
  boolean came(Frame frame, Place place, Instant time) {
    return isAfter(times.seen(frame), time)
        || frame.knownAs().stream().anyMatch(id -> isMovedAfter(id, place, time));
  }

  private static boolean isAfter(Optional<Instant> seen, Instant time) {
    return seen.filter(time::isBefore).isPresent();
  }

  private boolean isMovedAfter(FrameId id, Place place, Instant time) {
    var move = moved.get(id);
    return move != null && move.setup().equals(place.setup()) && move.at().isAfter(time);
  }
}
