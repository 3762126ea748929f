package org.framewright.world;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.function.Supplier;

/** A computer's clock, which may be set wrongly. */
final class WorldClock extends Clock {
  private final Supplier<Instant> truth;
  private Duration ahead = Duration.ZERO;

  WorldClock(Supplier<Instant> truth) {
    this.truth = truth;
  }

  void setAhead(int seconds) {
    ahead = Duration.ofSeconds(seconds);
  }

  @Override
  public Instant instant() {
    return truth.get().plus(ahead);
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException();
  }
}
