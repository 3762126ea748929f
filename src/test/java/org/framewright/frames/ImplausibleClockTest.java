package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class ImplausibleClockTest {
  private static final Instant BEGAN = Instant.parse("2026-11-23T09:00:00Z");
  private static final Instant NOW = Instant.parse("2026-11-25T18:00:00Z");
  private static final Camera A = new Camera("Invented Works", "Studio Body A", "1");

  private final List<Frame> frames = new ArrayList<>();

  private void taken(String time) {
    var capture =
        new Capture(
            Optional.of(LocalDateTime.parse(time)),
            Optional.empty(),
            Optional.of(A),
            OptionalInt.empty());
    var id = new FrameId("frame " + frames.size());
    frames.add(new Frame(id, Path.of("/frames"), id.value(), List.of(), capture, true));
  }

  private List<ImplausibleClock> clocks(PlausibleTimes plausible, Map<FrameId, Instant> arrivals) {
    return Attribution.of(
            frames,
            arrivals,
            List.of(),
            List.of(),
            _ -> Optional.empty(),
            _ -> Optional.empty(),
            ZoneOffset.UTC)
        .tally(plausible)
        .implausible();
  }

  private List<ImplausibleClock> clocks() {
    return clocks(PlausibleTimes.of(Optional.of(BEGAN), NOW), Map.of());
  }

  @Test
  void aClockThatWasNeverSetIsTwentyTwoYearsBehind() {
    taken("2026-11-25T10:00:00");
    taken("2004-01-01T00:10:00");
    taken("2004-01-01T00:12:00");
    assertThat(clocks())
        .singleElement()
        .returns(2, ImplausibleClock::frames)
        .returns(Optional.of(A), ImplausibleClock::camera)
        .returns("22 years behind", ImplausibleClock::description)
        .returns("its clock was never set", ImplausibleClock::why);
  }

  @Test
  void framesOfTheFutureAreToldInDays() {
    taken("2026-11-29T18:00:00");
    assertThat(clocks())
        .singleElement()
        .returns("4 days ahead", ImplausibleClock::description)
        .returns("its clock is set wrongly", ImplausibleClock::why);
    frames.clear();
    taken("2027-11-29T18:00:00");
    assertThat(clocks()).singleElement().returns("1 year ahead", ImplausibleClock::description);
  }

  @Test
  void anOldFrameOfSummerMayBeOfAnotherTime() {
    taken("2024-07-01T12:00:00");
    assertThat(clocks())
        .singleElement()
        .returns("2 years behind", ImplausibleClock::description)
        .returns(
            "its clock is set wrongly, or the frames are of another time", ImplausibleClock::why);
  }

  @Test
  void aYearBeforeTheJobAndADayFromNowAreTheLimits() {
    taken("2025-11-23T09:00:00");
    taken("2026-11-26T18:00:00");
    assertThat(clocks()).isEmpty();
    taken("2025-11-23T08:59:59");
    taken("2026-11-26T18:00:01");
    assertThat(clocks()).extracting(ImplausibleClock::frames).containsExactly(1, 1);
  }

  @Test
  void whereNothingIsKnownOfTheJobNothingIsImplausible() {
    taken("1904-01-01T00:00:00");
    assertThat(clocks(PlausibleTimes.ANY, Map.of())).isEmpty();
    assertThat(clocks(PlausibleTimes.of(Optional.empty(), NOW), Map.of())).isEmpty();
  }

  @Test
  void aClockThatWasMeasuredIsPutRightBefore() {
    taken("2004-01-01T00:10:00");
    var arrival = Instant.parse("2026-11-25T10:00:00Z");
    assertThat(
            clocks(
                PlausibleTimes.of(Optional.of(BEGAN), NOW),
                Map.of(frames.getFirst().id(), arrival)))
        .isEmpty();
  }

  @Test
  void aMeasuredClockIsToldInYearsAndDaysToo() {
    assertThat(clock(Duration.ofDays(8362)).description()).isEqualTo("22 years behind");
    assertThat(clock(Duration.ofDays(8362)).isNeverSet()).isTrue();
    assertThat(clock(Duration.ofDays(8362)).wholeHours()).isEmpty();
    assertThat(clock(Duration.ofDays(-400)).description()).isEqualTo("1 year ahead");
    assertThat(clock(Duration.ofDays(-400)).isNeverSet()).isFalse();
    assertThat(clock(Duration.ofDays(364)).isNeverSet()).isFalse();
    assertThat(clock(Duration.ofDays(3)).description()).isEqualTo("3 days behind");
    assertThat(clock(Duration.ofHours(26)).description()).isEqualTo("26 h slow");
    assertThat(clock(Duration.ofHours(-27)).description()).isEqualTo("27 h fast");
    assertThat(clock(Duration.ofHours(-27)).wholeHours()).isEmpty();
    assertThat(clock(Duration.ofSeconds(12)).description()).isEqualTo("12 s slow");
  }

  private static CameraClock clock(Duration toAdd) {
    return new CameraClock(
        A, OptionalDouble.of((double) toAdd.toSeconds()), OptionalDouble.of(0), 9, 9);
  }
}
