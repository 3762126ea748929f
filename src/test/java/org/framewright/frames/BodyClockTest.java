package org.framewright.frames;

import static org.assertj.core.api.Assertions.within;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** The edges of the windows are inclusive; the windows themselves are judgement, no source. */
class BodyClockTest {
  private static final Camera BODY = new Camera("Invented Works", "Studio Body A", "1");
  private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

  @Test
  void differencesTenSecondsApartLieTogetherAndMoreDoNot() {
    assertThat(measured(0, 100, 110).measuredOn()).isEqualTo(2);
    assertThat(offset(0, 100, 110)).isCloseTo(105, within(1e-6));
    assertThat(measured(0, 100, 110.001).measuredOn()).isEqualTo(1);
    assertThat(offset(0, 100, 110.001)).isCloseTo(0, within(1e-6));
  }

  @Test
  void lateOnesCountUpToAMinuteAfterTheWindow() {
    assertThat(measured(0, 70).measuredOn()).isEqualTo(2);
    assertThat(measured(0, 70.001).measuredOn()).isEqualTo(1);
  }

  @Test
  void ofEquallyManyTheEarliestCount() {
    assertThat(offset(500, 0)).isCloseTo(0, within(1e-6));
  }

  @Test
  void aBodyOfWhichFewerThanHalfOfFiveLieTogetherIsNotMeasured() {
    assertThat(measured(0, 1, 1000, 2000, 3000).offsetSeconds()).isEmpty();
    assertThat(measured(0, 1, 1000, 2000, 3000).measuredOn()).isZero();
    assertThat(measured(0, 1, 2, 1000, 2000).measuredOn()).isEqualTo(3);
    assertThat(measured(0, 1, 2, 1000, 2000, 3000).measuredOn()).isEqualTo(3);
    // Of four, nobody can say.
    assertThat(measured(0, 1000, 2000, 3000).measuredOn()).isEqualTo(1);
  }

  @Test
  void theOffsetIsTheMedianAndTheSpreadTheMedianDistanceFromIt() {
    var clock = measured(1, 2, 4);
    assertThat(clock.offsetSeconds().orElseThrow()).isCloseTo(2, within(1e-6));
    assertThat(clock.spreadSeconds().orElseThrow()).isCloseTo(1, within(1e-6));
    assertThat(offset(1, 2, 4, 9)).isCloseTo(3, within(1e-6));
    assertThat(measured(1, 2, 4, 9).spreadSeconds().orElseThrow()).isCloseTo(1.5, within(1e-6));
  }

  @Test
  void aFrameThatArrivedAMinuteAfterItsCaptureArrivedAsItWasTaken() {
    var clock = clock(0, 0, 0, 0, 0);
    assertThat(clock.isTethered(NOON.plusSeconds(60), NOON)).isTrue();
    assertThat(clock.isTethered(NOON.minusSeconds(60), NOON)).isTrue();
    assertThat(clock.isTethered(NOON.plusMillis(60_001), NOON)).isFalse();
    assertThat(clock().isTethered(NOON, NOON)).isFalse();
  }

  @Test
  void putsCaptureTimesRightByTheOffset() {
    assertThat(clock(2, 2, 2).putRight(NOON)).isEqualTo(NOON.plusSeconds(2));
    assertThat(clock().putRight(NOON)).isEqualTo(NOON);
  }

  @Test
  void countsFramesThatNobodySawArriveAndLeavesOutThoseOfNoBody() {
    var unseen = frame("u", Optional.of(BODY), NOON);
    var ofNone = frame("n", Optional.empty(), NOON);
    var clocks = BodyClock.measure(List.of(unseen, ofNone), new HashMap<>(), ZoneOffset.UTC);
    assertThat(clocks.keySet()).containsExactly(BODY);
    assertThat(clocks.get(BODY).describe().frames()).isEqualTo(1);
    assertThat(clocks.get(BODY).describe().offsetSeconds()).isEmpty();
  }

  @Test
  void wholeHoursAreThoseWithinNinetySeconds() {
    assertThat(measured(3690).wholeHours()).isEqualTo(OptionalInt.of(1));
    assertThat(measured(3691).wholeHours()).isEmpty();
    assertThat(measured(-3690).wholeHours()).isEqualTo(OptionalInt.of(-1));
    assertThat(measured(60).wholeHours()).isEmpty();
    assertThat(clock().describe().wholeHours()).isEmpty();
  }

  private static double offset(double... differences) {
    return measured(differences).offsetSeconds().orElseThrow();
  }

  private static CameraClock measured(double... differences) {
    return clock(differences).describe();
  }

  private static BodyClock clock(double... differences) {
    var frames = new ArrayList<Frame>();
    frames.add(frame("unseen", Optional.of(BODY), NOON));
    var arrivals = new HashMap<FrameId, Instant>();
    for (int i = 0; i < differences.length; i++) {
      var captured = NOON.plusSeconds(i);
      frames.add(frame("f" + i, Optional.of(BODY), captured));
      arrivals.put(
          new FrameId("f" + i), captured.plus(Duration.ofNanos(Math.round(differences[i] * 1e9))));
    }
    return BodyClock.measure(frames, arrivals, ZoneOffset.UTC).get(BODY);
  }

  private static Frame frame(String id, Optional<Camera> camera, Instant captured) {
    var local = LocalDateTime.ofInstant(captured, ZoneOffset.UTC);
    var capture = new Capture(Optional.of(local), Optional.empty(), camera, OptionalInt.empty());
    return new Frame(new FrameId(id), Path.of("/frames"), id, List.of(), capture, true);
  }
}
