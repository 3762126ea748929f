package org.framewright.frames;

/** What a slate in a picture says, in the light of the job that the picture lies in. */
public sealed interface SlateSays {
  /** A setup of the shot list, by the code that the list has for it. */
  record OfSetup(String setup) implements SlateSays {}

  /** A slate of this job whose code the shot list does not have, or no longer. */
  record Unlisted(String code) implements SlateSays {}

  /** A slate of another job. */
  record OfAnotherJob(String code) implements SlateSays {}

  /** The code on it. */
  default String code() {
    return switch (this) {
      case OfSetup(var setup) -> setup;
      case Unlisted(var code) -> code;
      case OfAnotherJob(var code) -> code;
    };
  }
}
