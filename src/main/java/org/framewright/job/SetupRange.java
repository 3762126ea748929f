package org.framewright.job;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.Stream;
import org.framewright.shotlist.Setup;

/** Setups as people name several at once: {@code 001 004 010..015}. */
public final class SetupRange {
  private static final String DOTS = "..";

  private SetupRange() {}

  /**
   * The words of a text in which several are named, with commas or spaces between them; a code that
   * has such signs itself, and nothing else, is one word.
   */
  public static List<String> words(Job job, String text) {
    var whole = text.strip();
    if (job.shotList().setup(whole).isPresent()) {
      return List.of(whole);
    }
    return Stream.of(whole.split("[,\\s]+")).filter(word -> !word.isEmpty()).toList();
  }

  /** Whether these words name several setups, even if it is a range of one. */
  public static boolean isSeveral(List<String> words) {
    return words.size() > 1 || words.stream().anyMatch(word -> word.contains(DOTS));
  }

  /**
   * The setups, in the order in which they are named, each once; those of a range in the order of
   * the list, whichever end is named first.
   */
  public static List<Setup> setups(Job job, List<String> words) throws JobException {
    var list = job.shotList();
    var setups = new LinkedHashSet<Setup>();
    for (var word : words) {
      // A code may hold dots itself.
      int dots = word.indexOf(DOTS);
      if (dots < 0 || list.setup(word).isPresent()) {
        setups.add(job.setup(word));
      } else {
        int from = index(job, word.substring(0, dots));
        int to = index(job, word.substring(dots + DOTS.length()));
        setups.addAll(list.setups().subList(Math.min(from, to), Math.max(from, to) + 1));
      }
    }
    return new ArrayList<>(setups);
  }

  private static int index(Job job, String code) throws JobException {
    return job.shotList().codes().indexOf(job.setup(code).code());
  }
}
