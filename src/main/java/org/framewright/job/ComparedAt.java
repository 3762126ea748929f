package org.framewright.job;

import java.time.Instant;

/**
 * A comparison of copies in the log.
 *
 * @param at when, by the job's time
 * @param station which computer made it
 */
public record ComparedAt(Instant at, String station, ComparedCopies found) {}
