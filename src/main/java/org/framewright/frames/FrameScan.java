package org.framewright.frames;

import java.util.List;

/**
 * What lay in the folder.
 *
 * @param frames all frames, complete or not, by folder and then by stem
 * @param files how many files the frames have together
 * @param troubles what was unreadable or broken
 */
public record FrameScan(List<Frame> frames, int files, List<Trouble> troubles) {}
