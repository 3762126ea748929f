package org.framewright.share;

import java.time.Instant;

/**
 * A device that may follow the job.
 *
 * @param id its name in the names of log files
 * @param name what people call it
 * @param role what it may see and do
 * @param connected whether its page is open and follows the job just now
 * @param lastSeen when it was heard of last, by this computer's clock
 */
public record PairedDevice(
    String id, String name, Role role, boolean connected, Instant lastSeen) {}
