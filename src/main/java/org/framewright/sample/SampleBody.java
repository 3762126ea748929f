package org.framewright.sample;

import java.time.Duration;
import java.time.ZoneOffset;

/**
 * An invented camera body.
 *
 * @param make invented maker
 * @param model invented model
 * @param serial as it stands in Exif's BodySerialNumber
 * @param zone the offset from UTC that its clock is set to
 * @param ahead how far its clock is ahead of the true time; negative when it is slow
 */
public record SampleBody(
    String make, String model, String serial, ZoneOffset zone, Duration ahead) {

  /** The body on the tripod: its clock is right to the second. */
  public static SampleBody studioA() {
    return new SampleBody(
        "Framewright Sample", "Studio Body A", "SA-104417", ZoneOffset.ofHours(1), Duration.ZERO);
  }

  /** The body in the hand: nobody set its clock back in October, so it is an hour fast. */
  public static SampleBody studioB() {
    return new SampleBody(
        "Framewright Sample",
        "Studio Body B",
        "SB-200963",
        ZoneOffset.ofHours(1),
        Duration.ofHours(1));
  }
}
