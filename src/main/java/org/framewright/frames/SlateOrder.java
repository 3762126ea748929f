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
 * burst only the first frame is looked at at once, and the last one as soon as it is seen to be the
 * last; the others when no frame has come for a while. A frame is looked at once; one that had
 * nothing to look at is looked at again when another of its files has come.
 *
 * <p>For one thread.
 */
final class SlateOrder {
  /** Frames of one body that follow each other faster are a burst. */
  private static final Duration BURST = Duration.ofMillis(700);

  /** After that long nothing follows in a burst; frames take a moment to arrive. */
  static final Duration SETTLED = Duration.ofSeconds(1);

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

  /** A frame that is not looked at yet, as it came last. */
  private static final class Waiting {
    private final long since;
    private Frame frame;

    Waiting(Frame frame, long since) {
      this.frame = frame;
      this.since = since;
    }
  }

  /** Where a frame stands among those of its body that are known so far. */
  private enum Standing {
    ALONE_OR_FIRST,
    INSIDE,
    LAST_SO_FAR
  }

  /** Whether the frame of an identity is waiting or was looked at, or had nothing to look at. */
  private final Map<FrameId, Boolean> known = new HashMap<>();

  /** By each of its identities, until it was looked at. */
  private final Map<FrameId, Waiting> pending = new HashMap<>();

  private final Map<Optional<Camera>, NavigableSet<Shot>> shots = new HashMap<>();
  private final Deque<Waiting> waiting = new ArrayDeque<>();
  private final Deque<Waiting> deferred = new ArrayDeque<>();
  private long latest;

  /**
   * Takes frames in that have come, in the order in which they came. One that waits is looked at
   * with the files that it has by then.
   *
   * @param now in nanoseconds of any clock that runs evenly
   */
  void add(Collection<Frame> frames, long now) {
    for (var frame : frames) {
      if (!frame.complete()) {
        continue;
      }
      var one = pending(frame);
      if (one.isPresent()) {
        if (frame.files().size() > one.get().frame.files().size()) {
          forget(one.get().frame);
          one.get().frame = frame;
          remember(frame);
          keep(one.get());
        }
      } else if (!isKnown(frame)) {
        enqueue(frame, now);
      }
    }
  }

  private void enqueue(Frame frame, long now) {
    remember(frame);
    var added = new Waiting(frame, now);
    keep(added);
    waiting.addLast(added);
    latest = now;
  }

  private void remember(Frame frame) {
    shot(frame).ifPresent(shot -> ofBody(frame).add(shot));
  }

  /** Its exposure is known by other files, or not at all: it is no neighbour of itself. */
  private void forget(Frame frame) {
    shot(frame).ifPresent(shot -> ofBody(frame).remove(shot));
  }

  private NavigableSet<Shot> ofBody(Frame frame) {
    return shots.computeIfAbsent(frame.capture().camera(), _ -> new TreeSet<>(Shot.IN_ORDER));
  }

  private void keep(Waiting one) {
    for (var id : one.frame.knownAs()) {
      known.put(id, true);
      pending.put(id, one);
    }
  }

  private Optional<Waiting> pending(Frame frame) {
    return frame.knownAs().stream().filter(pending::containsKey).map(pending::get).findFirst();
  }

  private boolean isKnown(Frame frame) {
    return known.containsKey(frame.id())
        || frame.knownAs().stream().anyMatch(id -> known.getOrDefault(id, false));
  }

  /** A frame was looked at. */
  void looked(Frame frame) {
    pending(frame).ifPresent(one -> one.frame.knownAs().forEach(pending::remove));
  }

  /** A frame had nothing to look at: it counts as new once its files make it another. */
  void hadNothing(Frame frame) {
    var now = pending(frame).map(one -> one.frame);
    looked(frame);
    frame.knownAs().forEach(id -> known.put(id, false));
    now.ifPresent(this::forget);
    // Others of its files may have come while it was looked at.
    now.filter(it -> it.files().size() > frame.files().size()).ifPresent(it -> enqueue(it, latest));
  }

  /** The frame to look at now; none if there is none, or time only later. */
  Optional<Frame> next(long now) {
    var later = new ArrayDeque<Waiting>();
    Waiting found = null;
    while (found == null && !waiting.isEmpty()) {
      var newest = waiting.removeLast();
      switch (standing(newest.frame)) {
        // It stays inside: frames only come to it.
        case INSIDE -> deferred.addFirst(newest);
        case LAST_SO_FAR -> {
          if (untilSettled(newest, now) > 0) {
            later.addFirst(newest);
          } else {
            found = newest;
          }
        }
        case ALONE_OR_FIRST -> found = newest;
      }
    }
    waiting.addAll(later);
    if (found == null && untilIdle(now) <= 0) {
      found = deferred.pollLast();
    }
    return Optional.ofNullable(found).map(one -> one.frame);
  }

  private static long untilSettled(Waiting one, long now) {
    return one.since + SETTLED.toNanos() - now;
  }

  private long untilIdle(long now) {
    return latest + IDLE.toNanos() - now;
  }

  /** In how many nanoseconds there is time for one of those that are put off; 0 or less if now. */
  long untilNext(long now) {
    long until = untilIdle(now);
    for (var one : waiting) {
      until = Math.min(until, untilSettled(one, now));
    }
    return until;
  }

  int size() {
    return waiting.size() + deferred.size();
  }

  private Standing standing(Frame frame) {
    var shot = shot(frame);
    if (shot.isEmpty()) {
      return Standing.ALONE_OR_FIRST;
    }
    var others = ofBody(frame);
    var before = others.lower(shot.get());
    if (before == null || !before.isSoonBefore(shot.get())) {
      return Standing.ALONE_OR_FIRST;
    }
    var after = others.higher(shot.get());
    return after != null && shot.get().isSoonBefore(after) ? Standing.INSIDE : Standing.LAST_SO_FAR;
  }

  private static Optional<Shot> shot(Frame frame) {
    return frame.capture().time().map(time -> new Shot(time, frame.stem(), frame.id().value()));
  }
}
