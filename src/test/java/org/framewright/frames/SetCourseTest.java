package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class SetCourseTest {
  private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

  @Test
  void aSpanBeginsWithItsFirstMomentAndEndsBeforeItsLast() {
    var course = course(span("001", 0, 60), span("002", 100, 200));
    assertThat(at(course, -1)).isEmpty();
    assertThat(at(course, 0)).contains("001");
    assertThat(at(course, 59)).contains("001");
    assertThat(at(course, 60)).isEmpty();
    assertThat(at(course, 100)).contains("002");
    assertThat(at(course, 199)).contains("002");
    assertThat(at(course, 200)).isEmpty();
  }

  @Test
  void ofSpansThatOverlapTheLaterBegunCountsAndTheOuterOneAroundIt() {
    var course = course(span("inner", 100, 200), span("outer", 0, 1000), span("late", 150, 160));
    assertThat(at(course, 99)).contains("outer");
    assertThat(at(course, 155)).contains("late");
    assertThat(at(course, 160)).contains("inner");
    assertThat(at(course, 200)).contains("outer");
    assertThat(at(course, 1000)).isEmpty();
  }

  @Test
  void aSpanThatLastsHoldsEverythingSince() {
    var open = new OnSetSpan("001", Optional.empty(), NOON, Optional.empty());
    var course = course(open);
    assertThat(course.at(NOON)).contains(open);
    assertThat(course.at(Instant.parse("9999-01-01T00:00:00Z"))).contains(open);
    assertThat(course.nearest(NOON.minusSeconds(1))).contains(open);
  }

  @Test
  void theNearestIsTheOneThatEndedOrBeginsLeastFarAwayAndOfTwoTheLater() {
    var course = course(span("long", 0, 300), span("short", 100, 200), span("next", 400, 500));
    assertThat(nearest(course, -50)).contains("long");
    assertThat(nearest(course, 349)).contains("long");
    assertThat(nearest(course, 350)).contains("next");
    assertThat(nearest(course, 351)).contains("next");
    assertThat(nearest(course, 150)).contains("short");
    assertThat(nearest(course, 900)).contains("next");
    assertThat(nearest(course(), 0)).isEmpty();
  }

  @Test
  void afterTheLastSpanTheOneThatEndedLastIsNearest() {
    var course = course(span("long", 0, 300), span("short", 100, 200));
    assertThat(nearest(course, 350)).contains("long");
  }

  /** The oracle looks at every span. */
  @Property(tries = 300)
  void agreesWithALookAtEverySpan(@ForAll long seed) {
    var random = new Random(seed);
    var spans = new ArrayList<OnSetSpan>();
    for (int i = random.nextInt(12); i > 0; i--) {
      int from = random.nextInt(100);
      spans.add(span("S" + i, from, from + 1 + random.nextInt(40)));
    }
    var course = new SetCourse(spans);
    for (int second = -5; second < 150; second++) {
      var time = NOON.plusSeconds(second);
      var latest =
          spans.stream()
              .filter(span -> !time.isBefore(span.from()) && time.isBefore(span.until().get()))
              .map(OnSetSpan::from)
              .max(Comparator.naturalOrder());
      assertThat(course.at(time).map(OnSetSpan::from)).isEqualTo(latest);
      var least = spans.stream().map(span -> distance(span, time)).min(Duration::compareTo);
      assertThat(course.nearest(time).map(span -> distance(span, time))).isEqualTo(least);
    }
  }

  private static Duration distance(OnSetSpan span, Instant time) {
    if (time.isBefore(span.from())) {
      return Duration.between(time, span.from());
    }
    return time.isBefore(span.until().get())
        ? Duration.ZERO
        : Duration.between(span.until().get(), time);
  }

  private static Optional<String> at(SetCourse course, long second) {
    return course.at(NOON.plusSeconds(second)).map(OnSetSpan::setup);
  }

  private static Optional<String> nearest(SetCourse course, long second) {
    return course.nearest(NOON.plusSeconds(second)).map(OnSetSpan::setup);
  }

  private static SetCourse course(OnSetSpan... spans) {
    return new SetCourse(List.of(spans));
  }

  private static OnSetSpan span(String setup, long from, long until) {
    return new OnSetSpan(
        setup, Optional.empty(), NOON.plusSeconds(from), Optional.of(NOON.plusSeconds(until)));
  }
}
