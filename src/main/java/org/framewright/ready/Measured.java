package org.framewright.ready;

/** A check and what it came to. */
public record Measured(Topic topic, Outcome outcome) {}
