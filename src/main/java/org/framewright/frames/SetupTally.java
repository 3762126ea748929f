package org.framewright.frames;

import java.util.SequencedMap;

/**
 * How many complete frames a setup has.
 *
 * @param frames all of them
 * @param byView by the view's code; those with no view are counted under the empty text
 */
public record SetupTally(int frames, SequencedMap<String, Integer> byView) {}
