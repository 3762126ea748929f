package org.framewright.frames;

import java.util.List;
import java.util.Map;
import java.util.SequencedMap;

/**
 * The frames, counted by setup and view. Only complete frames are counted.
 *
 * @param bySetup each setup that has frames, by code in natural order
 * @param unassigned the complete frames that no setup claims
 * @param incomplete the frames that are not whole, or not yet
 * @param cameras the bodies and their clocks
 * @param places where each assigned frame belongs
 * @param frames the number of complete frames
 * @param files the number of their files
 */
public record Tally(
    SequencedMap<String, SetupTally> bySetup,
    List<Unassigned> unassigned,
    List<Frame> incomplete,
    List<CameraClock> cameras,
    Map<FrameId, Place> places,
    int frames,
    int files) {}
