package org.framewright.sample;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/** The time of the invented job, which goes on when the story says so. */
final class SampleClock extends Clock {
  private final ZoneId zone;
  private Instant now;

  SampleClock(Instant now, ZoneId zone) {
    this.now = now;
    this.zone = zone;
  }

  void set(Instant time) {
    now = time;
  }

  void pass(Duration time) {
    now = now.plus(time);
  }

  @Override
  public Instant instant() {
    return now;
  }

  @Override
  public ZoneId getZone() {
    return zone;
  }

  @Override
  public Clock withZone(ZoneId other) {
    return new SampleClock(now, other);
  }
}
