package org.framewright.ui.frames;

import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import javafx.beans.value.ObservableBooleanValue;
import org.framewright.job.JobState;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;

/** Ratings by the digits of the keyboard. */
final class Ratings {
  private Ratings() {}

  /**
   * The commands that rate, from 0, not rated, up.
   *
   * @param page their page's id
   * @param some whether there is something to rate
   */
  static List<Command> commands(
      Texts texts, String page, IntConsumer rate, ObservableBooleanValue some) {
    return IntStream.rangeClosed(0, JobState.MOST_RATED)
        .mapToObj(rating -> command(texts, page, rating, rate, some))
        .toList();
  }

  private static Command command(
      Texts texts, String page, int rating, IntConsumer rate, ObservableBooleanValue some) {
    return Command.of(
            page + ".rate" + rating,
            rating == 0
                ? texts.get("command.frames.notRated")
                : texts.get("command.frames.rate", rating),
            Keys.digit(rating),
            () -> rate.accept(rating))
        .onlyWhile(some);
  }
}
