package org.framewright.job;

import java.time.Instant;

/**
 * An answer and when it was given.
 *
 * @param at when, by the job's time
 * @param station the computer that it was given on
 */
public record ReadyAt(Instant at, String station, ReadyRecord said) {}
