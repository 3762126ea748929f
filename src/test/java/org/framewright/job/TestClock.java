package org.framewright.job;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that a test sets. */
public final class TestClock extends Clock {
  private Instant now;

  public TestClock(String now) {
    this.now = Instant.parse(now);
  }

  public void set(String time) {
    now = Instant.parse(time);
  }

  public void pass(Duration time) {
    now = now.plus(time);
  }

  @Override
  public Instant instant() {
    return now;
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    return Clock.fixed(now, zone);
  }
}
