package org.framewright.job;

/**
 * In how many places a job's frames were.
 *
 * @param frames how many frames were compared
 * @param once how many of them lay on one disk only
 */
public record FramesCompared(int frames, int once) {}
