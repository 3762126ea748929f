package org.framewright.studio;

import java.time.LocalDateTime;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Frames of one day or of several: complete pictures, each once, without clips and slates.
 *
 * @param frames how many
 * @param selects how many of them were chosen; nothing where no frame of the job ever was
 * @param first when the first was taken, at the place of the shoot; nothing where no time is known
 * @param last when the last was
 */
public record FrameNumbers(
    int frames, OptionalInt selects, Optional<LocalDateTime> first, Optional<LocalDateTime> last) {

  static FrameNumbers frame(Optional<LocalDateTime> taken, OptionalInt selects) {
    return new FrameNumbers(1, selects, taken, taken);
  }

  /** Both together. */
  FrameNumbers plus(FrameNumbers other) {
    return new FrameNumbers(
        frames + other.frames,
        SetupNumbers.sum(selects, other.selects),
        Stream.of(first, other.first).flatMap(Optional::stream).min(LocalDateTime::compareTo),
        Stream.of(last, other.last).flatMap(Optional::stream).max(LocalDateTime::compareTo));
  }
}
