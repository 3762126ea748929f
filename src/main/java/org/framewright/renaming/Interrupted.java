package org.framewright.renaming;

import java.time.Instant;

/**
 * A batch that was begun and not ended, and that nobody is working on.
 *
 * @param batch its id
 * @param at when it was begun
 * @param renames how many files it renames
 */
public record Interrupted(String batch, Instant at, int renames) {}
