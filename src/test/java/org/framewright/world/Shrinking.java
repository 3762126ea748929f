package org.framewright.world;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes a script that fails as short as it can be, and tells it. */
final class Shrinking {
  private static final int MOST_TRIES = 400;

  private Shrinking() {}

  /** Plays a script; how it failed, if it did. */
  @FunctionalInterface
  interface Player {
    Optional<Simulator.Failure> play(List<Step> steps);
  }

  /** The same failure with as few steps as can be found. */
  static Simulator.Failure shortest(Simulator.Failure failure) {
    return shortest(
        failure, steps -> Simulator.play(failure.seed(), List.copyOf(steps), new Counts()));
  }

  static Simulator.Failure shortest(Simulator.Failure failure, Player player) {
    var best = cut(failure, upTo(failure, failure.at()), player);
    int tries = 0;
    for (int size = Math.max(best.steps().size() / 2, 1); size >= 1; size /= 2) {
      for (int from = best.steps().size() - size; from >= 1; from -= size) {
        if (from + size <= best.steps().size() && tries++ < MOST_TRIES) {
          var fewer = new ArrayList<>(best.steps().subList(0, from));
          fewer.addAll(best.steps().subList(from + size, best.steps().size()));
          best = cut(best, fewer, player);
        }
      }
    }
    return best;
  }

  /** What these steps come to where that is the same failure, else the one that is known. */
  private static Simulator.Failure cut(Simulator.Failure known, List<Step> steps, Player player) {
    return player
        .play(steps)
        .filter(failed -> words(failed.why()).equals(words(known.why())))
        .map(
            failed ->
                new Simulator.Failure(
                    known.seed(), upTo(failed, failed.at()), failed.at(), failed.why()))
        .orElse(known);
  }

  private static List<Step> upTo(Simulator.Failure failure, int at) {
    return List.copyOf(failure.steps().subList(0, Math.min(at + 1, failure.steps().size())));
  }

  /** Digits and names change with the steps; the words before them tell what failed. */
  private static String words(Throwable why) {
    var text = why.getClass().getSimpleName() + " " + why.getMessage();
    return text.replaceAll("[^a-zA-Z ].*", "").strip();
  }

  /** What happened, one line a step. */
  static String story(Simulator.Failure failure) {
    var text =
        new StringBuilder(
            "Seed " + failure.seed() + ", in " + failure.steps().size() + " steps:\n");
    int number = 0;
    for (var step : failure.steps()) {
      text.append("%4d  %s.%n".formatted(++number, step.said()));
    }
    text.append("  then: ").append(failure.why()).append('\n');
    for (var line : failure.why().getStackTrace()) {
      if (line.getClassName().startsWith("org.framewright")) {
        text.append("        at ").append(line).append('\n');
      }
    }
    return text.toString();
  }
}
