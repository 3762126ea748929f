package org.framewright.job;

import java.time.Instant;

/**
 * An event in its log.
 *
 * @param number its place in the log of its station, from 1
 * @param stamp its place among the events of all stations
 * @param at what the station's own clock showed
 */
record Entry(long number, Stamp stamp, Instant at, Event event) {

  /**
   * When it happened, by the job's time: its stamp, unless the station only took that over from an
   * event whose date nobody's clock can be trusted for. Every station comes to the same answer.
   */
  Instant time() {
    var stamped = stamp.instant();
    return stamped.isAfter(at.plus(StationClock.TRUSTED_AHEAD)) ? at : stamped;
  }
}
