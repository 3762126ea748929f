package org.framewright.frames;

import java.util.function.UnaryOperator;
import org.framewright.base.Text;

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

  /**
   * What a frame is that shows it.
   *
   * @param plain makes text of other people fit to be shown
   */
  default Text said(UnaryOperator<String> plain) {
    return switch (this) {
      case OfSetup(var setup) -> Text.of("a slate, of {0}", plain.apply(setup));
      case Unlisted(var code) ->
          Text.of("a slate, of {0}, which is not in the list", plain.apply(code));
      case OfAnotherJob _ -> Text.of("a slate of another job");
    };
  }

  /**
   * What is wrong with it; no words where it names a setup of the list.
   *
   * @param frame the name of the frame that shows it
   */
  default Text wrong(String frame, UnaryOperator<String> plain) {
    return switch (this) {
      case OfSetup _ -> Text.NONE;
      case Unlisted(var code) ->
          Text.of(
              "slate {0} says {1}, which is not in the list",
              plain.apply(frame), plain.apply(code));
      case OfAnotherJob _ -> Text.of("{0} is a slate of another job", plain.apply(frame));
    };
  }

  /** Why a frame that comes after it belongs to no setup; no words where it belongs to one. */
  default Text whyNone(String frame) {
    return switch (this) {
      case OfSetup _ -> Text.NONE;
      case Unlisted _ -> wrong(frame, UnaryOperator.identity());
      case OfAnotherJob _ -> Text.of("it comes after {0}, a slate of another job", frame);
    };
  }
}
