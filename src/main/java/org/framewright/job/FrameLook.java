package org.framewright.job;

import java.util.Optional;
import org.framewright.frames.FrameId;

/**
 * A frame whose picture was searched for a slate.
 *
 * @param name the name, without ending, that the frame came with, as far as that is known: its
 *     number tells the order in which it was taken, also once it has another name
 * @param slate the text of the slate that it shows
 */
public record FrameLook(FrameId frame, String name, Optional<String> slate) {}
