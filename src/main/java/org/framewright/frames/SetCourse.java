package org.framewright.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What was on set in the course of the job. */
final class SetCourse {
  private final List<OnSetSpan> spans;

  SetCourse(List<OnSetSpan> spans) {
    this.spans = spans.stream().sorted(Comparator.comparing(OnSetSpan::from).reversed()).toList();
  }

  /** The span that a time falls into; where several do, the one that began last. */
  Optional<OnSetSpan> at(Instant time) {
    return spans.stream().filter(span -> span.contains(time)).findFirst();
  }

  Optional<OnSetSpan> nearest(Instant time) {
    return spans.stream().min(Comparator.comparing(span -> distance(span, time)));
  }

  private static Duration distance(OnSetSpan span, Instant time) {
    if (time.isBefore(span.from())) {
      return Duration.between(time, span.from());
    }
    return span.contains(time) ? Duration.ZERO : Duration.between(span.until().get(), time);
  }

  static Place place(OnSetSpan span) {
    return new Place(span.setup(), span.view());
  }
}
