package org.framewright.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What was on set in the course of the job; answers in logarithmic time. */
final class SetCourse {
  /** By begin. */
  private final List<OnSetSpan> spans;

  /** For each span, which one of it and those before it ended last. */
  private final int[] endedLast;

  SetCourse(List<OnSetSpan> spans) {
    this.spans = spans.stream().sorted(Comparator.comparing(OnSetSpan::from)).toList();
    this.endedLast = new int[this.spans.size()];
    for (int i = 1; i < endedLast.length; i++) {
      int before = endedLast[i - 1];
      endedLast[i] = end(i).isBefore(end(before)) ? before : i;
    }
  }

  private Instant end(int span) {
    return spans.get(span).until().orElse(Instant.MAX);
  }

  /** The span that a time falls into; where several do, the one that began last. */
  Optional<OnSetSpan> at(Instant time) {
    for (int i = lastBegun(time); i >= 0 && end(endedLast[i]).isAfter(time); i--) {
      if (spans.get(i).contains(time)) {
        return Optional.of(spans.get(i));
      }
    }
    return Optional.empty();
  }

  /** The span that is least far from a time; of two that are equally far, the later. */
  Optional<OnSetSpan> nearest(Instant time) {
    var at = at(time);
    if (at.isPresent() || spans.isEmpty()) {
      return at;
    }
    int begun = lastBegun(time);
    if (begun < 0) {
      return Optional.of(spans.getFirst());
    }
    int before = endedLast[begun];
    if (begun + 1 == spans.size()) {
      return Optional.of(spans.get(before));
    }
    var after = spans.get(begun + 1);
    var since = Duration.between(end(before), time);
    var until = Duration.between(time, after.from());
    return Optional.of(since.compareTo(until) < 0 ? spans.get(before) : after);
  }

  /** The last span that began at a time or before it; -1 for none. */
  private int lastBegun(Instant time) {
    int low = 0;
    int high = spans.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (spans.get(middle).from().isAfter(time)) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low - 1;
  }

  static Place place(OnSetSpan span) {
    return new Place(span.setup(), span.view());
  }
}
