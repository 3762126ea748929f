package org.framewright.job;

import java.time.Instant;
import java.util.Optional;

/**
 * The setup that is on set.
 *
 * @param since by the job's time, {@link Job#now()}
 */
public record OnSet(String setup, Optional<String> view, Instant since) {}
