package org.framewright.frames;

/**
 * A frame that shows a slate.
 *
 * @param says what is on it
 * @param byPerson whether a person said so; then it is a slate however many like it stand in a row
 * @param backwards whether it counts for the frames before it, too, back to the slate before
 * @param ruling what a person said to it where it contradicts what was on set
 */
public record ShotSlate(SlateSays says, boolean byPerson, boolean backwards, Ruling ruling) {
  /** Which of the two holds, where a slate contradicts what a person put on set. */
  public enum Ruling {
    /** Nobody said anything: what is on set holds, and the contradiction is told. */
    OPEN,
    /** The slate is right. */
    FOLLOW,
    /** What is on set is right. */
    STAY
  }

  /** One that was read from the picture, to which nobody said anything. */
  public static ShotSlate read(SlateSays says) {
    return new ShotSlate(says, false, false, Ruling.OPEN);
  }
}
