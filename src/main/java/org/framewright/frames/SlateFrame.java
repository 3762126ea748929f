package org.framewright.frames;

import java.time.Instant;
import java.util.Optional;

/**
 * A slate among the frames of a scan.
 *
 * @param frame the frame that shows it; it belongs to no setup and is not counted
 * @param slate what it says
 * @param frames how many frames and clips it brought to its setup
 * @param opened when it came, if it came as it was taken, is the last one of its body, names a
 *     setup of the list, and nothing that a person put on set holds against it
 */
public record SlateFrame(Frame frame, ShotSlate slate, int frames, Optional<Instant> opened) {}
