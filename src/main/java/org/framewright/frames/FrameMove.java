package org.framewright.frames;

import java.time.Instant;
import java.util.Optional;

/**
 * A person said where a frame belongs. An empty setup takes what was said before back, so that the
 * frame belongs again where name and time put it.
 */
public record FrameMove(FrameId frame, String setup, Optional<String> view, Instant at) {}
