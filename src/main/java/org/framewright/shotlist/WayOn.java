package org.framewright.shotlist;

/**
 * A way to read a list that could not be read as it is, for a person to choose.
 *
 * @param description what it does, in words: {@code one setup for each "Style", of its lines}
 * @param options what to read the list with
 */
public record WayOn(String description, ListOptions options) {}
