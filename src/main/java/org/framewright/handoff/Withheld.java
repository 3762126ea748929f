package org.framewright.handoff;

/**
 * A pick that cannot be handed off.
 *
 * @param what the frame's name, or the line of the list of picks
 * @param why in a sentence
 * @param mend what would mend it
 */
public record Withheld(String what, String why, String mend) {}
