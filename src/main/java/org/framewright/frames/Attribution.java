package org.framewright.frames;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Which setup each frame belongs to. */
public final class Attribution {
  private Attribution() {}

  /** Assigns each complete frame to a setup and counts. */
  public static Tally assign(
      List<Frame> frames,
      Map<FrameId, Instant> arrivals,
      List<OnSetSpan> spans,
      List<FrameMove> moves,
      Function<Frame, Optional<Place>> namedPlace) {
    if (frames.isEmpty()) {
      return new Tally(
          new java.util.LinkedHashMap<>(), List.of(), List.of(), List.of(), Map.of(), 0, 0);
    }
    throw new UnsupportedOperationException();
  }
}
