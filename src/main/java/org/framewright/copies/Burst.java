package org.framewright.copies;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.frames.Camera;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;

/**
 * Frames of one body that follow each other fast: what the disk that they arrive on has to take.
 *
 * @param frames how many
 * @param bytes of all but the first, whose writing began with the span
 * @param span from the first to the last, no shorter than it was
 */
public record Burst(int frames, long bytes, Duration span) {
  /**
   * Fewer say more of the camera's own memory than of what it sends. Common practice, no source.
   */
  private static final int FEWEST = 5;

  private static final int MOST = 200;
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(2);
  private static final Duration SHORTEST = Duration.ofSeconds(1);

  private record Shot(LocalDateTime at, long bytes) {}

  /** What the camera sends in one second of it. */
  public double bytesPerSecond() {
    return bytes / (span.toNanos() / 1e9);
  }

  /**
   * The burst of the highest rate; none where no body took five frames, each within two seconds of
   * the one before.
   */
  public static Optional<Burst> fastest(Collection<Frame> frames) {
    Map<Optional<Camera>, List<Shot>> byBody = new HashMap<>();
    for (var frame : frames) {
      if (!frame.isClip()) {
        frame
            .capture()
            .time()
            .ifPresent(
                at ->
                    byBody
                        .computeIfAbsent(frame.capture().camera(), _ -> new ArrayList<>())
                        .add(new Shot(at, sent(frame))));
      }
    }
    Optional<Burst> fastest = Optional.empty();
    for (var shots : byBody.values()) {
      shots.sort(Comparator.comparing(Shot::at));
      fastest = faster(fastest, fastestOf(shots));
    }
    return fastest;
  }

  /** What the body itself wrote of a frame. */
  private static long sent(Frame frame) {
    return frame.files().stream()
        .filter(file -> file.role() != FileRole.SIDECAR && file.role() != FileRole.COMPANION)
        .mapToLong(file -> file.size())
        .sum();
  }

  private static Optional<Burst> fastestOf(List<Shot> shots) {
    boolean toTheSecond =
        shots.stream()
            .allMatch(shot -> shot.at().equals(shot.at().truncatedTo(ChronoUnit.SECONDS)));
    Optional<Burst> fastest = Optional.empty();
    for (int first = 0; first < shots.size(); first++) {
      long bytes = 0;
      for (int last = first + 1; last < Math.min(shots.size(), first + MOST); last++) {
        if (between(shots.get(last - 1), shots.get(last)).compareTo(LONGEST_PAUSE) > 0) {
          break;
        }
        bytes += shots.get(last).bytes();
        // A time to the second is up to one too late or too early.
        var span =
            between(shots.get(first), shots.get(last))
                .plus(toTheSecond ? Duration.ofSeconds(1) : Duration.ZERO);
        if (last - first + 1 >= FEWEST && span.compareTo(SHORTEST) >= 0) {
          fastest = faster(fastest, Optional.of(new Burst(last - first + 1, bytes, span)));
        }
      }
    }
    return fastest;
  }

  private static Duration between(Shot one, Shot next) {
    return Duration.between(one.at(), next.at());
  }

  private static Optional<Burst> faster(Optional<Burst> one, Optional<Burst> other) {
    return one.isEmpty()
            || (other.isPresent() && other.get().bytesPerSecond() > one.get().bytesPerSecond())
        ? other
        : one;
  }
}
