package org.framewright.ui.frames;

import java.util.function.IntConsumer;
import javafx.scene.input.KeyCode;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;

/** Ratings by the digits of the keyboard. */
final class Ratings {
  private Ratings() {}

  /**
   * A command that rates.
   *
   * @param page the page's id
   * @param rating from 0, not rated, to 5
   */
  static Command command(Texts texts, String page, int rating, IntConsumer rate) {
    return Command.of(
            page + ".rate" + rating,
            rating == 0
                ? texts.get("command.frames.notRated")
                : texts.get("command.frames.rate", rating),
            Keys.plain(KeyCode.valueOf("DIGIT" + rating)),
            () -> rate.accept(rating))
        .orBy(Keys.plain(KeyCode.valueOf("NUMPAD" + rating)));
  }
}
