package org.framewright.world;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Makes a script that fails as short as it can be, and tells it. */
final class Shrinking {
  private static final int MOST_TRIES = 400;

  private Shrinking() {}

  /** The same failure with as few steps as can be found. */
  static Simulator.Failure shortest(Simulator.Failure failure) {
    var best = failure;
    best = cut(best, best.steps().subList(0, Math.min(best.at() + 1, best.steps().size())), best);
    int tries = 0;
    for (int size = Math.max(best.steps().size() / 2, 1); size >= 1; size /= 2) {
      for (int from = best.steps().size() - size; from >= 1 && tries < MOST_TRIES; from -= size) {
        if (from + size > best.steps().size()) {
          continue;
        }
        var fewer = new ArrayList<>(best.steps().subList(0, from));
        fewer.addAll(best.steps().subList(from + size, best.steps().size()));
        best = cut(failure, fewer, best);
        tries++;
      }
    }
    return best;
  }

  private static Simulator.Failure cut(
      Simulator.Failure failure, List<Step> steps, Simulator.Failure best) {
    var played = Simulator.play(failure.seed(), List.copyOf(steps), new Counts());
    return played.isPresent() && isSame(failure.why(), played.get().why())
        ? new Simulator.Failure(
            failure.seed(),
            played.get().steps().subList(0, Math.min(played.get().at() + 1, steps.size())),
            played.get().at(),
            played.get().why())
        : best;
  }

  /** Digits and names change with the steps; the words around them tell what failed. */
  private static boolean isSame(Throwable one, Throwable other) {
    return Objects.equals(words(one), words(other));
  }

  private static String words(Throwable why) {
    var text = why.getClass().getSimpleName() + " " + why.getMessage();
    return text.replaceAll("[^a-zA-Z ].*", "").strip();
  }

  /** What happened, one line a step. */
  static String story(Simulator.Failure failure) {
    var text = new StringBuilder("Seed " + failure.seed() + ", in " + failure.steps().size() + " steps:\n");
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
