package org.framewright.handoff.verify;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;

/** A package that was read, in words, a line each. */
public final class PackageDescription {
  private static final int MOST_LISTS = 6;

  private PackageDescription() {}

  /** By what it was checked, what is wrong with it, and whether it is whole. */
  public static List<String> of(PackageCheck check) {
    var lines = new ArrayList<String>();
    lines.add(check.kind().words() + ": " + lists(check.lists()));
    lines.addAll(problems(check));
    if (!check.closed() && !check.unlisted().isEmpty()) {
      int count = check.unlisted().size();
      lines.add(
          PlainText.counted(count, "file")
              + (count == 1 ? " is" : " are")
              + " there of which no list says anything"
              + (count == 1 ? ": " : ", such as ")
              + check.unlisted().getFirst());
    }
    lines.add(
        PlainText.counted(check.files(), "file")
            + " compared"
            + (check.whole() ? ", all as they should be: whole" : ": NOT WHOLE, " + counts(check)));
    return List.copyOf(lines);
  }

  private static String lists(List<String> lists) {
    int more = lists.size() - MOST_LISTS;
    return more > 0
        ? String.join(", ", lists.subList(0, MOST_LISTS)) + " and " + more + " more"
        : String.join(", ", lists);
  }

  /** What is wrong with it; nothing where it is whole. */
  public static List<String> problems(PackageCheck check) {
    var list = check.kind() == PackageCheck.Kind.BAGIT ? "manifest" : "list";
    var lines = new ArrayList<String>();
    check.faults().forEach(fault -> lines.add("in its " + list + ": " + fault.sentence()));
    check.different().forEach(file -> lines.add("not what its " + list + " says: " + file));
    check.missing().forEach(file -> lines.add("in its " + list + ", not there: " + file));
    check.notFetched().forEach(file -> lines.add("not fetched yet: " + file));
    if (check.closed()) {
      check.unlisted().forEach(file -> lines.add("there, not in its " + list + ": " + file));
    }
    return List.copyOf(lines);
  }

  /** How much is wrong of each kind: {@code 1 different, 2 missing}. */
  public static String counts(PackageCheck check) {
    var parts = new ArrayList<String>();
    add(parts, check.different().size(), "different");
    add(parts, check.missing().size(), "missing");
    add(parts, check.notFetched().size(), "not fetched yet");
    add(parts, check.closed() ? check.unlisted().size() : 0, "in no list");
    if (!check.faults().isEmpty()) {
      parts.add(PlainText.counted(check.faults().size(), "fault") + " of the package itself");
    }
    return String.join(", ", parts);
  }

  private static void add(List<String> parts, int count, String what) {
    if (count > 0) {
      parts.add(count + " " + what);
    }
  }
}
