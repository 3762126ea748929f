package org.framewright.frames;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How far a body's clock is off, measured on the frames that arrived as they were taken.
 *
 * @param camera the body
 * @param offsetSeconds what must be added to the body's capture times to make them those of the
 *     station: the median of arrival minus capture, so the way from camera to disk is in it; none
 *     where no frame of the body was seen arriving
 * @param spreadSeconds the median distance from that median
 * @param frames how many complete frames the body has
 * @param measuredOn on how many of them the offset was measured
 */
public record CameraClock(
    Camera camera,
    OptionalDouble offsetSeconds,
    OptionalDouble spreadSeconds,
    int frames,
    int measuredOn) {
  private static final double TOLERATED = 5;

  /** Zones lie between UTC-12 and UTC+14. */
  private static final int MOST_HOURS = 26;

  /**
   * The whole hours that the clock is off, where that is what is wrong with it: a zone or summer
   * time set wrongly. Within a minute and a half of a whole hour counts.
   */
  public OptionalInt wholeHours() {
    if (offsetSeconds.isEmpty()) {
      return OptionalInt.empty();
    }
    double seconds = offsetSeconds.getAsDouble();
    int hours = (int) Math.round(seconds / 3600);
    return hours != 0 && Math.abs(hours) <= MOST_HOURS && Math.abs(seconds - hours * 3600.0) <= 90
        ? OptionalInt.of(hours)
        : OptionalInt.empty();
  }

  /** Whether the clock is known to be off by more than people need to care about, 5 seconds. */
  public boolean isOff() {
    return offsetSeconds.isPresent() && Math.abs(offsetSeconds.getAsDouble()) > TOLERATED;
  }

  /**
   * How far the clock is off, as {@code 12 s slow}, {@code 1 h fast} or {@code 22 years behind}.
   *
   * @throws java.util.NoSuchElementException where that is not known
   */
  public String description() {
    double toAdd = offsetSeconds.orElseThrow();
    if (wholeHours().isPresent()) {
      // A zone or summer time set wrongly; as minutes nobody would see it.
      return Math.abs(wholeHours().getAsInt()) + " h" + (toAdd < 0 ? " fast" : " slow");
    }
    return ClockWords.off(Duration.ofSeconds(-Math.round(toAdd)));
  }

  /** Whether it is years behind, as a clock that was never set. */
  public boolean isNeverSet() {
    return offsetSeconds.isPresent()
        && offsetSeconds.getAsDouble() > 0
        && ClockWords.years(Duration.ofSeconds(Math.round(offsetSeconds.getAsDouble()))) > 0;
  }
}
