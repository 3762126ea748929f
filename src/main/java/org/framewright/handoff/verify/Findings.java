package org.framewright.handoff.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** What the lists of a package and the names in it say, as it is found out. */
final class Findings {
  private static final int MOST_PROBLEMS = 100;
  private static final String REMEDY = "Ask for the package again, or for this file.";

  private final SortedMap<String, Plan.Reading> readings = new TreeMap<>();
  private final SortedSet<String> missing = new TreeSet<>();
  private final SortedSet<String> unlisted = new TreeSet<>();
  private final SortedSet<String> notFetched = new TreeSet<>();
  private final List<Problem> faults = new ArrayList<>();
  private final List<Problem> warnings = new ArrayList<>();

  /** That the content of a file comes to a sum. */
  void want(Listing.Found file, Sum sum) {
    want(file, OptionalLong.empty(), List.of(sum));
  }

  /** That a file has a size, where that is said, and its content comes to some sums. */
  void want(Listing.Found file, OptionalLong size, List<Sum> sums) {
    var before = readings.get(file.name());
    var both = new ArrayList<>(before == null ? List.of() : before.sums());
    sums.stream().filter(sum -> !both.contains(sum)).forEach(both::add);
    readings.put(
        file.name(),
        new Plan.Reading(
            file, before == null || before.size().isEmpty() ? size : before.size(), both));
  }

  void missing(String name) {
    missing.add(name);
  }

  boolean isMissing(String name) {
    return missing.contains(name);
  }

  void unlisted(String name) {
    unlisted.add(name);
  }

  void notFetched(String name) {
    missing.remove(name);
    notFetched.add(name);
  }

  void fault(Text what, String where) {
    fault(new Problem(what, where, REMEDY));
  }

  void fault(Problem problem) {
    if (faults.size() < MOST_PROBLEMS) {
      faults.add(problem);
    }
  }

  /** What breaks no rule, or only one of the strict rules where looser ones hold. */
  void warn(Text what, String where) {
    if (warnings.size() < MOST_PROBLEMS) {
      warnings.add(new Problem(what, where, ""));
    }
  }

  Plan plan(PackageCheck.Kind kind, List<String> lists, boolean closed) {
    return new Plan(
        List.copyOf(readings.values()),
        new PackageCheck(
            kind,
            lists,
            closed,
            0,
            List.copyOf(missing),
            List.of(),
            List.copyOf(unlisted),
            List.copyOf(notFetched),
            faults,
            warnings));
  }
}
