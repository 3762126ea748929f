package org.framewright.frames;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;

/**
 * In which order frames are looked at for slates: the newest first. A slate is shot singly, so of a
 * burst only the first and the last frame are looked at at once, the others when no frame has come
 * for a while. A frame is looked at once; one that had nothing to look at is looked at again when
 * another of its files has come.
 *
 * <p>For one thread.
 */
final class SlateOrder {
  /** Frames of one body that follow each other faster are a burst. */
  private static final Duration BURST = Duration.ofMillis(700);

  /** After that long without a new frame there is time for the others. */
  static final Duration IDLE = Duration.ofSeconds(2);

  private record Shot(LocalDateTime time, String stem, String id) {
    private static final Comparator<Shot> IN_ORDER =
        Comparator.comparing(Shot::time)
            .thenComparing(Shot::stem, NaturalOrder.INSTANCE)
            .thenComparing(Shot::id);

    boolean isSoonBefore(Shot later) {
      return Duration.between(time, later.time).compareTo(BURST) < 0;
    }
  }

  /** Whether the frame of an identity is waiting or was looked at, or had nothing to look at. */
  private final Map<FrameId, Boolean> known = new HashMap<>();

  private final Map<Optional<Camera>, NavigableSet<Shot>> shots = new HashMap<>();
  private final Deque<Frame> waiting = new ArrayDeque<>();
  private final Deque<Frame> deferred = new ArrayDeque<>();
  private long latest;

  /**
   * Takes frames in that have come, in the order in which they came.
   *
   * @param now in nanoseconds of any clock that runs evenly
   */
  void add(Collection<Frame> frames, long now) {
    for (var frame : frames) {
      if (frame.complete() && !isKnown(frame)) {
        frame.knownAs().forEach(id -> known.put(id, true));
        shot(frame)
            .ifPresent(
                shot ->
                    shots
                        .computeIfAbsent(
                            frame.capture().camera(), _ -> new TreeSet<>(Shot.IN_ORDER))
                        .add(shot));
        waiting.addLast(frame);
        latest = now;
      }
    }
  }

  private boolean isKnown(Frame frame) {
    return known.containsKey(frame.id())
        || frame.knownAs().stream().anyMatch(id -> known.getOrDefault(id, false));
  }

  /** A frame had nothing to look at: it counts as new once its files make it another. */
  void hadNothing(Frame frame) {
    frame.knownAs().forEach(id -> known.put(id, false));
  }

  /** The frame to look at now; none if there is none, or time only later. */
  Optional<Frame> next(long now) {
    while (!waiting.isEmpty()) {
      var newest = waiting.removeLast();
      if (!isInsideABurst(newest)) {
        return Optional.of(newest);
      }
      // It stays inside: frames only come to it.
      deferred.addFirst(newest);
    }
    return untilIdle(now) > 0 ? Optional.empty() : Optional.ofNullable(deferred.pollLast());
  }

  /** In how many nanoseconds there is time for those that were put off; 0 or less if now. */
  long untilIdle(long now) {
    return latest + IDLE.toNanos() - now;
  }

  int size() {
    return waiting.size() + deferred.size();
  }

  private boolean isInsideABurst(Frame frame) {
    var shot = shot(frame);
    if (shot.isEmpty()) {
      return false;
    }
    var others = shots.get(frame.capture().camera());
    var before = others.lower(shot.get());
    var after = others.higher(shot.get());
    return before != null
        && after != null
        && before.isSoonBefore(shot.get())
        && shot.get().isSoonBefore(after);
  }

  private static Optional<Shot> shot(Frame frame) {
    return frame.capture().time().map(time -> new Shot(time, frame.stem(), frame.id().value()));
  }
}
