package org.framewright.naming;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/** What is wrong with a convention's file, so far. */
final class Faults {
  /** There are so many that the rest of the file is not looked at. */
  static final class TooMany extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooMany() {
      super("too many faults", null, false, false);
    }
  }

  private final List<Finding> found = new ArrayList<>();

  void add(Declared.Place place, Text what, Text remedy) {
    add(Rule.BAD_CONVENTION, place, what, remedy);
  }

  /**
   * @throws TooMany at the last fault that is reported
   */
  void add(Rule rule, Declared.Place place, Text what, Text remedy) {
    found.add(
        new Finding(
            rule,
            Severity.ERROR,
            place.where(),
            place.line(),
            place.column(),
            place.where().isEmpty() ? what : Text.of("{0}: {1}", place.where(), what),
            Optional.empty(),
            remedy.isEmpty() ? Optional.empty() : Optional.of(remedy)));
    if (found.size() == Limits.FAULTS) {
      throw new TooMany();
    }
  }

  void missing(Item item, String key, String example) {
    add(item.place(), Text.of("“{0}:” is missing", key), Text.of("Add it, such as {0}", example));
  }

  int count() {
    return found.size();
  }

  boolean none() {
    return found.isEmpty();
  }

  /** In the order of the file. */
  List<Finding> inOrder() {
    return found.stream()
        .sorted(Comparator.comparingInt(Finding::line).thenComparingInt(Finding::column))
        .toList();
  }
}
