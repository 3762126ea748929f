package org.framewright.frames;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.Month;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Frames of one body whose capture times cannot be right: years before the job, or after now.
 *
 * @param camera the body, where its frames name one
 * @param frames how many of its frames are so
 * @param ahead by how much they are ahead; negative for behind: the median
 * @param first the first of the times that they say
 */
public record ImplausibleClock(
    Optional<Camera> camera, int frames, Duration ahead, LocalDateTime first) {

  /** How far its clock is off: {@code 22 years behind}. */
  public String description() {
    return ClockWords.off(ahead);
  }

  /**
   * What is likely wrong with it. A clock that was never set counts from the first of January of
   * some year; common practice, no source.
   */
  public String why() {
    if (ahead.isNegative() && first.getMonth() == Month.JANUARY) {
      return "its clock was never set";
    }
    return ahead.isNegative()
        ? "its clock is set wrongly, or the frames are of another time"
        : "its clock is set wrongly";
  }

  /** Gathers such frames by body and direction. */
  static final class Gathering {
    private record Key(Optional<Camera> camera, boolean behind) {}

    private record Seen(Duration ahead, LocalDateTime time) {}

    private final Map<Key, List<Seen>> seen = new LinkedHashMap<>();

    void add(Frame frame, Duration ahead) {
      seen.computeIfAbsent(
              new Key(frame.capture().camera(), ahead.isNegative()), _ -> new ArrayList<>())
          .add(new Seen(ahead, frame.capture().time().orElseThrow()));
    }

    List<ImplausibleClock> clocks() {
      var clocks = new ArrayList<ImplausibleClock>();
      seen.forEach(
          (key, frames) -> {
            var sorted = frames.stream().map(Seen::ahead).sorted().toList();
            clocks.add(
                new ImplausibleClock(
                    key.camera(),
                    frames.size(),
                    sorted.get(sorted.size() / 2),
                    frames.stream().map(Seen::time).min(LocalDateTime::compareTo).orElseThrow()));
          });
      return List.copyOf(clocks);
    }
  }
}
