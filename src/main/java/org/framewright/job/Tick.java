package org.framewright.job;

import java.time.Instant;
import org.framewright.shotlist.SetupState;

/** A tick of the list, as it was made. */
public record Tick(String setup, SetupState state, MarkDetails details, Instant at) {}
