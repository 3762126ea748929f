package org.framewright.frames;

/**
 * Names a frame by what it is, not by what it is called: made of the capture time, the body, and
 * the size and a digest of the ends of one of its files. It holds across renames, moves and
 * restarts; two copies of one file share it; a file that is written anew gets another.
 *
 * @param value 32 hexadecimal digits
 */
public record FrameId(String value) {}
