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

  /** Bytes that the planned frames need; none where that cannot be told. */
  public OptionalLong needed() {
    return frames == 0 || planned.isEmpty()
        ? OptionalLong.empty()
        : OptionalLong.of(planned.getAsLong() * bytesPerFrame());
  }

  /** Whether they fit with a tenth to spare; true where nothing can be told. */
  public boolean enough() {
    return needed().isEmpty() || needed().getAsLong() <= free - free / 10;
  }
}
