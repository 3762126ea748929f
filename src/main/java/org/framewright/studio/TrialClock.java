package org.framewright.studio;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/** The clock of an invented set: behind the right time while its morning is played. */
final class TrialClock extends Clock {
  private final Clock right;
  private Duration behind;

  TrialClock(Clock right, Duration behind) {
    this.right = right;
    this.behind = behind;
  }

  /** Time passes at once, but never beyond now. */
  void pass(Duration time) {
    behind = behind.compareTo(time) > 0 ? behind.minus(time) : Duration.ZERO;
  }

  @Override
  public ZoneId getZone() {
    return right.getZone();
  }

  @Override
  public Clock withZone(ZoneId zone) {
    return new TrialClock(right.withZone(zone), behind);
  }

  @Override
  public Instant instant() {
    return right.instant().minus(behind);
  }
}
