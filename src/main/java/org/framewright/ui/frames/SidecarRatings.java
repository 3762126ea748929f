package org.framewright.ui.frames;

import java.util.List;
import java.util.function.Consumer;
import org.framewright.handoff.RatingSidecars;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Tasks;

/** Writes the ratings that were given in the job into sidecars, once somebody has agreed. */
final class SidecarRatings {
  private final JobSession session;
  private final Tasks tasks;
  private final Texts texts;
  private final Consumer<String> said;
  private final Consumer<Throwable> trouble;

  /**
   * @param said hears what came of it, in words
   */
  SidecarRatings(
      JobSession session,
      Tasks tasks,
      Texts texts,
      Consumer<String> said,
      Consumer<Throwable> trouble) {
    this.session = session;
    this.tasks = tasks;
    this.texts = texts;
    this.said = said;
    this.trouble = trouble;
  }

  /** Finds out what is to be written, and asks; says so where that is nothing. */
  void prepare(Consumer<List<RatingSidecars.Planned>> ask) {
    var scan = session.view().get().scan();
    tasks.quietly(
        () -> RatingSidecars.plan(session.job(), scan),
        planned -> {
          if (planned.isEmpty()) {
            said.accept(texts.get("frames.ratingsSame"));
          } else {
            ask.accept(planned);
          }
        },
        trouble);
  }

  /** What is going to happen, in words. */
  String question(List<RatingSidecars.Planned> planned) {
    long made = planned.stream().filter(RatingSidecars.Planned::isNew).count();
    return texts.get("frames.ratingsWhat", planned.size() - made, made);
  }

  /** Writes them. */
  void write(List<RatingSidecars.Planned> planned) {
    tasks.run(
        texts.get("frames.ratingsRunning"),
        steps -> RatingSidecars.write(planned, steps),
        outcome -> said.accept(words(outcome)),
        trouble);
  }

  private String words(RatingSidecars.Outcome outcome) {
    var written = texts.get("frames.ratingsWritten", outcome.written().size());
    return outcome.left().isEmpty()
        ? written
        : written
            + " "
            + texts.get(
                "frames.ratingsLeft",
                outcome.left().size(),
                outcome.left().getFirst().where(),
                texts.say(outcome.left().getFirst().said()));
  }
}
