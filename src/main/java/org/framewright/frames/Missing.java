package org.framewright.frames;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.framewright.shotlist.Setup;

/**
 * What a setup still lacks: a wanted view with too few frames, or frames in all.
 *
 * @param view the view's code; empty where frames of the setup as a whole are meant
 * @param frames how many there are
 * @param wanted how many are wanted; of a view without a number, one
 */
public record Missing(Optional<String> view, int frames, int wanted) {

  /**
   * What a setup lacks, view by view in the list's order, then in all where the list wants a number
   * of the setup itself.
   *
   * @param tally the setup's count; none where it has no frames
   */
  public static List<Missing> of(Setup setup, Optional<SetupTally> tally) {
    var missing = new ArrayList<Missing>();
    for (var view : setup.views()) {
      int frames = tally.map(counted -> count(counted, view.code())).orElse(0);
      int wanted = view.frames().orElse(1);
      if (frames < wanted) {
        missing.add(new Missing(Optional.of(view.code()), frames, wanted));
      }
    }
    int all = tally.map(SetupTally::frames).orElse(0);
    if (setup.framesWanted().isPresent() && all < setup.framesWanted().getAsInt()) {
      missing.add(new Missing(Optional.empty(), all, setup.framesWanted().getAsInt()));
    }
    return List.copyOf(missing);
  }

  private static int count(SetupTally tally, String view) {
    return tally.byView().entrySet().stream()
        .filter(entry -> entry.getKey().equalsIgnoreCase(view))
        .mapToInt(entry -> entry.getValue())
        .sum();
  }

  /**
   * In words: {@code back: none of 2}, {@code in all: 3 of 10}.
   *
   * @param viewName what a view's code stands for, such as {@code back} for {@code B}
   */
  public String words(UnaryOperator<String> viewName) {
    return String.format(
        Locale.ROOT,
        "%s: %s of %d",
        view.map(viewName).orElse("in all"),
        frames == 0 ? "none" : Integer.toString(frames),
        wanted);
  }
}
