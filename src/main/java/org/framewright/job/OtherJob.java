package org.framewright.job;

import java.util.UUID;

/**
 * Another job of the same store.
 *
 * @param id what the store calls it
 * @param name as it was when it was written down
 */
public record OtherJob(UUID id, String name) {}
