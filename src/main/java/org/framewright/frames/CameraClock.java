package org.framewright.frames;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.framewright.base.Durations;

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
    return hours != 0 && Math.abs(seconds - hours * 3600.0) <= 90
        ? OptionalInt.of(hours)
        : OptionalInt.empty();
  }

  /** Whether the clock is known to be off by more than people need to care about, 5 seconds. */
  public boolean isOff() {
    return offsetSeconds.isPresent() && Math.abs(offsetSeconds.getAsDouble()) > TOLERATED;
  }

  /**
   * How far the clock is off, as {@code 12 s slow} or {@code 1 h fast}.
   *
   * @throws java.util.NoSuchElementException where that is not known
   */
  public String description() {
    double toAdd = offsetSeconds.orElseThrow();
    // Whole hours are a zone or summer time set wrongly; as minutes nobody would see it.
    var by =
        wholeHours().isPresent()
            ? Math.abs(wholeHours().getAsInt()) + " h"
            : Durations.words(Duration.ofSeconds(Math.round(Math.abs(toAdd))));
    return by + (toAdd < 0 ? " fast" : " slow");
  }
}
