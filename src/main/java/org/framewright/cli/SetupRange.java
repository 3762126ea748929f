package org.framewright.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/** Setups as people name several at once: {@code 001 004 010..015}. */
final class SetupRange {
  private static final String DOTS = "..";

  private SetupRange() {}

  /** Whether these words name several setups, even if it is a range of one. */
  static boolean isSeveral(List<String> words) {
    return words.size() > 1 || words.stream().anyMatch(word -> word.contains(DOTS));
  }

  /**
   * The setups, in the order in which they are named, each once; those of a range in the order of
   * the list, whichever end is named first.
   */
  static List<Setup> setups(ShotList list, List<String> words) throws CommandFailure {
    var setups = new LinkedHashSet<Setup>();
    for (var word : words) {
      // A code may hold dots itself.
      var one = list.setup(word);
      int dots = word.indexOf(DOTS);
      if (one.isPresent()) {
        setups.add(one.get());
      } else if (dots < 0) {
        throw unknown(list, word);
      } else {
        int from = index(list, word.substring(0, dots));
        int to = index(list, word.substring(dots + DOTS.length()));
        setups.addAll(list.setups().subList(Math.min(from, to), Math.max(from, to) + 1));
      }
    }
    return new ArrayList<>(setups);
  }

  private static int index(ShotList list, String code) throws CommandFailure {
    Optional<Setup> found = list.setup(code);
    if (found.isEmpty()) {
      throw unknown(list, code);
    }
    return list.codes().indexOf(found.get().code());
  }

  private static CommandFailure unknown(ShotList list, String code) {
    var codes = list.codes();
    return CommandFailure.badInput(
        "there is no setup \"" + code + "\" in the shot list",
        codes.isEmpty()
            ? "The list is empty; import one first."
            : "Its setups go from " + codes.getFirst() + " to " + codes.getLast() + ".");
  }
}
