package org.framewright.job;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.frames.Camera;
import org.framewright.frames.CameraClock;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;

/** When frames were taken, by the job's time. */
final class FrameTimes {
  private final ZoneId zone;
  private final Map<FrameId, Instant> arrivals;
  private final Map<Camera, Duration> offsets = new HashMap<>();

  FrameTimes(ZoneId zone, Map<FrameId, Instant> arrivals, List<CameraClock> cameras) {
    this.zone = zone;
    this.arrivals = arrivals;
    for (var camera : cameras) {
      camera
          .offsetSeconds()
          .ifPresent(
              seconds ->
                  offsets.put(camera.camera(), Duration.ofMillis(Math.round(seconds * 1000))));
    }
  }

  /** When it was taken, its body's clock put right. */
  Optional<Instant> captured(Frame frame) {
    var offset = frame.capture().camera().map(offsets::get).orElse(Duration.ZERO);
    return frame.capture().instant(zone).map(time -> offset == null ? time : time.plus(offset));
  }

  /** The same as day and time of day at the place of the shoot. */
  Optional<LocalDateTime> capturedLocal(Frame frame) {
    return captured(frame).map(time -> LocalDateTime.ofInstant(time, zone));
  }

  /** When it was seen to arrive. */
  Optional<Instant> arrived(Frame frame) {
    return frame.arrival(arrivals);
  }

  /** When it came, as well as that is known. */
  Optional<Instant> seen(Frame frame) {
    return arrived(frame).or(() -> captured(frame));
  }

  /** Whether its capture or its arrival is known. */
  boolean known(Frame frame) {
    return seen(frame).isPresent();
  }

  /** Its place in time among all frames: capture, else arrival, else the file's own time. */
  Instant order(Frame frame) {
    return captured(frame).or(() -> arrived(frame)).orElseGet(() -> frame.primary().modified());
  }

  /** The day and time of day at the place of the shoot. */
  LocalDateTime local(Frame frame) {
    return LocalDateTime.ofInstant(order(frame), zone);
  }
}
