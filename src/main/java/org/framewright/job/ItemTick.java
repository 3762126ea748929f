package org.framewright.job;

import java.time.Instant;

/**
 * A tick of an item of a checklist.
 *
 * @param by who looked
 * @param station the computer that it was said on
 * @param at when, by the job's time
 */
public record ItemTick(String by, String station, Instant at) {}
