package org.framewright.day;

import java.util.OptionalLong;

/**
 * Whether the disk holds what is still planned.
 *
 * @param used bytes of the job's complete frames
 * @param frames how many frames that is
 * @param planned frames that are still to come; none where the list does not say and nothing was
 *     shot to judge by
 * @param free bytes that the volume has left
 */
public record Space(long used, int frames, OptionalLong planned, long free) {

  /** Bytes of one frame with all its files, measured on the job's own; 0 before the first. */
  public long bytesPerFrame() {
    return frames == 0 ? 0 : Math.ceilDiv(used, frames);
  }

  /** Bytes that the planned frames need; none where nobody can say. */
  public OptionalLong needed() {
    return frames == 0 || planned.isEmpty()
        ? OptionalLong.empty()
        : OptionalLong.of(product(planned.getAsLong(), bytesPerFrame()));
  }

  /** Of two numbers that are not negative; what is too large becomes the largest there is. */
  private static long product(long one, long other) {
    return Math.multiplyHigh(one, other) != 0 || one * other < 0 ? Long.MAX_VALUE : one * other;
  }

  /** Whether they fit with a tenth to spare; true where nobody can say. */
  public boolean enough() {
    return needed().isEmpty() || needed().getAsLong() <= free - free / 10;
  }
}
