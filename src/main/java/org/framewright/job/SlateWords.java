package org.framewright.job;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.framewright.frames.ShotSlate;

/**
 * What people said of the slate in a frame; of what contradicts, the latest.
 *
 * @param is whether they said what it is; else it is what was read from it
 * @param setup the setup whose slate it is said to be; empty for no slate
 * @param backwards whether it counts for the frames before it, too
 * @param ruling which holds, it or what was on set
 */
public record SlateWords(
    boolean is, Optional<String> setup, boolean backwards, ShotSlate.Ruling ruling) {
  static final SlateWords NONE =
      new SlateWords(false, Optional.empty(), false, ShotSlate.Ruling.OPEN);

  /** The same with the code that the list has for the setup now. */
  SlateWords of(UnaryOperator<String> code) {
    return new SlateWords(is, setup.map(code), backwards, ruling);
  }

  SlateWords and(SlateWord word) {
    return switch (word) {
      case SlateWord.OfSetup(var of) -> new SlateWords(true, Optional.of(of), backwards, ruling);
      case SlateWord.NoSlate() -> new SlateWords(true, Optional.empty(), false, ruling);
      case SlateWord.Backwards() -> new SlateWords(is, setup, true, ruling);
      case SlateWord.Follow _ -> new SlateWords(is, setup, backwards, ShotSlate.Ruling.FOLLOW);
      case SlateWord.Stay() -> new SlateWords(is, setup, backwards, ShotSlate.Ruling.STAY);
    };
  }
}
