package org.framewright.job;

import java.time.Instant;

/**
 * An event in its log.
 *
 * @param number its place in the log of its station, from 1
 * @param stamp its place among the events of all stations
 * @param at what the station's own clock showed
 */
record Entry(long number, Stamp stamp, Instant at, Event event) {}
