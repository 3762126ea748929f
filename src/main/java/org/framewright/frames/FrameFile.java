package org.framewright.frames;

import java.nio.file.Path;
import java.time.Instant;

/**
 * One file of a frame.
 *
 * @param path where it lies, below the scanned root
 * @param size in bytes
 * @param modified its time on the disk, by the clock of whoever wrote it
 * @param role what it is to the frame
 */
public record FrameFile(Path path, long size, Instant modified, FileRole role) {}
