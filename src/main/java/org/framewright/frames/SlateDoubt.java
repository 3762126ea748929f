package org.framewright.frames;

import java.util.function.UnaryOperator;
import org.framewright.base.Text;

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
public record SlateDoubt(Frame frame, SlateSays says, String onSet, int frames, boolean lasts) {

  /**
   * In a sentence without its end.
   *
   * @param plain makes text of other people fit to be shown
   */
  public Text said(UnaryOperator<String> plain) {
    var slate = plain.apply(frame.stem());
    var code = plain.apply(says.code());
    return lasts
        ? Text.of("slate {0} says {1}, on set is {2}", slate, code, plain.apply(onSet))
        : Text.of("slate {0} says {1}, on set was {2}", slate, code, plain.apply(onSet));
  }
}
