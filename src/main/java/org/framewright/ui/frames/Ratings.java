package org.framewright.ui.frames;

import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.framewright.job.JobState;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;

/** Ratings by the digits of the keyboard. */
final class Ratings {
  private Ratings() {}

  /** The commands that rate, from 0, not rated, up; {@code page} is their page's id. */
  static List<Command> commands(Texts texts, String page, IntConsumer rate) {
    return IntStream.rangeClosed(0, JobState.MOST_RATED)
        .mapToObj(rating -> command(texts, page, rating, rate))
        .toList();
  }

  private static Command command(Texts texts, String page, int rating, IntConsumer rate) {
    return Command.of(
        page + ".rate" + rating,
        rating == 0
            ? texts.get("command.frames.notRated")
            : texts.get("command.frames.rate", rating),
        Keys.digit(rating),
        () -> rate.accept(rating));
  }
}
