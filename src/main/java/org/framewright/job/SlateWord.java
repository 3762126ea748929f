package org.framewright.job;

import java.util.Optional;

/** What a person says of a slate, or of a frame that shows one. */
public sealed interface SlateWord {
  /** It is the slate of a setup, whatever was read from it. */
  record OfSetup(String setup) implements SlateWord {}

  /** It is no slate. */
  record NoSlate() implements SlateWord {}

  /** It counts for the frames before it, too, back to the last slate. */
  record Backwards() implements SlateWord {}

  /**
   * It is right, and what was on set when it came was not.
   *
   * @param onSet the setup that is thereby on set, from the slate on; none where another has come
   *     on set since
   */
  record Follow(Optional<String> onSet) implements SlateWord {}

  /** What was on set when it came was right. */
  record Stay() implements SlateWord {}
}
