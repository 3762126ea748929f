package org.framewright.job;

import java.time.Instant;

/**
 * What a device asks for, by its place in the log of the device. What is sent again has the same
 * number and the same time, and is kept once.
 *
 * @param number from 1, without gaps
 * @param at when the person did it, by the device's clock put right by the computer's
 */
public record Numbered(long number, Instant at, Asked asked) {
  public Numbered {
    if (number < 1) {
      throw new IllegalArgumentException("number " + number);
    }
    at = Instant.ofEpochMilli(StationClock.legal(at).toEpochMilli());
  }
}
