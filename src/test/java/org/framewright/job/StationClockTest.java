package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;

class StationClockTest {
  private final TestClock wall = new TestClock("2026-11-23T09:00:00Z");
  private final StationClock clock = new StationClock(wall);

  private static Entry entry(String stamp, int count, String at) {
    return new Entry(
        1,
        new Stamp(Instant.parse(stamp).toEpochMilli(), count, "set"),
        Instant.parse(at),
        new Event.Unknown("x"));
  }

  private void saw(String stamp, int count, String at) {
    clock.saw(entry(stamp, count, at));
  }

  @Test
  void stampsWithItsOwnTimeWhileNobodyIsAhead() {
    assertThat(clock.next("desk")).isEqualTo(new Stamp(wall.instant().toEpochMilli(), 0, "desk"));
    saw("2026-11-23T08:59:59Z", 3, "2026-11-23T08:59:59Z");
    assertThat(clock.next("desk").count()).isZero();
    assertThat(clock.now()).isEqualTo(wall.instant());
  }

  @Test
  void comesAfterWhatItSawInTheSameMillisecond() {
    saw("2026-11-23T09:00:00Z", 3, "2026-11-23T09:00:00Z");
    assertThat(clock.next("desk")).isEqualTo(new Stamp(wall.instant().toEpochMilli(), 4, "desk"));
  }

  @Test
  void comesAfterWhatIsDatedFarAheadWithoutTakingItsTime() {
    saw("2300-01-01T00:00:00Z", 0, "2300-01-01T00:00:00Z");
    var next = clock.next("desk");
    assertThat(next.instant()).isEqualTo("2300-01-01T00:00:00Z");
    assertThat(next.count()).isEqualTo(1);
    var entry = new Entry(1, next, clock.own(), new Event.Unknown("x"));
    assertThat(entry.time()).isEqualTo(wall.instant());
    assertThat(clock.now()).isEqualTo(wall.instant());
  }

  @Test
  void takesTheTimeOfItsStampUpToThirtyDaysAheadOfItsClock() {
    assertThat(entry("2026-12-23T09:00:00Z", 0, "2026-11-23T09:00:00Z").time())
        .isEqualTo("2026-12-23T09:00:00Z");
    assertThat(entry("2026-12-23T09:00:00.001Z", 0, "2026-11-23T09:00:00Z").time())
        .isEqualTo("2026-11-23T09:00:00Z");
  }

  @Test
  void hasAlwaysRoomForTheNextStamp() {
    saw("2026-11-23T09:00:00Z", Integer.MAX_VALUE, "2026-11-23T09:00:00Z");
    assertThat(clock.next("desk"))
        .isEqualTo(new Stamp(wall.instant().toEpochMilli() + 1, 0, "desk"));
    saw("9999-12-31T23:59:59.999Z", Integer.MAX_VALUE - 1, "2026-11-23T09:00:00Z");
    var last = new Stamp(StationClock.LAST.toEpochMilli(), Integer.MAX_VALUE, "desk");
    assertThat(clock.next("desk")).isEqualTo(last);
    clock.saw(new Entry(1, last, clock.own(), new Event.Unknown("x")));
    var ordinary = new Stamp(wall.instant().toEpochMilli() + 1, 0, "desk");
    assertThat(clock.next("desk")).isEqualTo(ordinary);
    clock.saw(new Entry(2, ordinary, clock.own(), new Event.Unknown("x")));
    assertThat(clock.next("desk").compareTo(ordinary)).as("never the same twice").isPositive();
  }

  @Test
  void mentionsADateThatNoClockShowedOnceAndNotWhatTookItOver() {
    saw("2300-01-01T00:00:00Z", 1, "2026-11-23T09:00:00Z");
    var warnings = new ArrayList<Text>();
    clock.describe("desk", warnings);
    assertThat(warnings).as("it took the date over").isEmpty();
    saw("2300-01-01T00:00:00Z", 0, "2026-11-23T09:00:00Z");
    clock.describe("desk", warnings);
    assertThat(warnings).singleElement().asString().contains("clock of set");
  }

  @Test
  void keepsTheLargestDifferenceOfAStation() {
    saw("2026-11-23T10:00:00Z", 0, "2026-11-23T10:00:00Z");
    saw("2026-11-23T09:30:00Z", 0, "2026-11-23T09:30:00Z");
    var warnings = new ArrayList<Text>();
    clock.describe("set", warnings);
    assertThat(warnings)
        .extracting(Text::english)
        .containsExactly(
            "This computer's clock was set back by 60 min; the job goes by the later one. Let all"
                + " computers set their clocks from the network.");
  }

  @Test
  void writesTimesThatCanBeReadAgainWhateverTheClockShows() {
    for (var shown :
        new Instant[] {Instant.MIN, Instant.MAX, Instant.parse("-0001-01-01T00:00:00Z")}) {
      var odd = new StationClock(Clock.fixed(shown, ZoneOffset.UTC));
      assertThat(odd.own()).isBetween(StationClock.FIRST, StationClock.LAST);
    }
    var early =
        new StationClock(Clock.fixed(Instant.parse("1901-01-01T00:00:00Z"), ZoneOffset.UTC));
    assertThat(early.next("desk").millis()).isNotNegative();
    var late =
        new StationClock(Clock.fixed(Instant.parse("+20000-01-01T00:00:00Z"), ZoneOffset.UTC));
    assertThat(late.next("desk").instant()).isEqualTo(StationClock.LAST);
    assertThat(late.now()).isEqualTo(StationClock.LAST);
  }
}
