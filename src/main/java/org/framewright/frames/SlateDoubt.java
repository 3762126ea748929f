package org.framewright.frames;

/**
 * A slate contradicts what a person had put on set when it came. The frames behind it stay with
 * what was on set, until somebody says which of the two holds.
 *
 * @param frame the frame that shows the slate
 * @param says what it says
 * @param onSet the setup that was on set
 * @param frames how many frames and clips are in doubt
 * @param lasts whether that setup still is on set
 */
public record SlateDoubt(Frame frame, SlateSays says, String onSet, int frames, boolean lasts) {}
