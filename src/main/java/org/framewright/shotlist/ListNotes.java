package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.base.Text;

/** What is said about a list while it is read: the first of everything. */
final class ListNotes {
  private final String source;
  private final List<ListProblem> problems = new ArrayList<>();
  private final List<ListProblem> remarks = new ArrayList<>();
  private final List<ListProblem> leftOut = new ArrayList<>();
  private final SequencedMap<Text, Repeated> repeated = new LinkedHashMap<>();
  private ListTable table = ListTable.NONE;
  private final Set<WayOn> waysOn = new LinkedHashSet<>();

  private record Repeated(Cell cell, Text remedy, int cells) {}

  /**
   * @param source the file's name, with the sheet's for a workbook
   */
  ListNotes(String source) {
    this.source = source;
  }

  /** The table was found. */
  void found(ListTable found) {
    table = found;
  }

  ListTable table() {
    return table;
  }

  void add(ListProblem problem) {
    if (problems.size() < Limits.PROBLEMS) {
      problems.add(problem);
    }
  }

  void addRemark(ListProblem remark) {
    if (remarks.size() < Limits.PROBLEMS) {
      remarks.add(remark);
    }
  }

  void addLeftOut(ListProblem remark) {
    addRemark(remark);
    if (leftOut.size() < Limits.PROBLEMS) {
      leftOut.add(remark);
    }
  }

  /** What stops the import, at a cell. */
  void problem(Cell cell, Text what, Text remedy) {
    add(at(cell, what, remedy));
  }

  /**
   * The same whose remedy is an option, too.
   *
   * @param option as a command line gives it
   */
  void problem(Cell cell, Text what, Text remedy, String option) {
    add(at(cell, what, remedy).with(option));
  }

  /** What was guessed at a cell. */
  void remark(Cell cell, Text what, Text remedy) {
    remark(cell, what, remedy, "");
  }

  /** The same whose remedy is an option. */
  void remark(Cell cell, Text what, Text remedy, String option) {
    addRemark(at(cell, what, remedy).with(option));
  }

  /** Why the line of a cell is no setup. */
  void leaveOut(Cell cell, Text what, Text remedy) {
    addLeftOut(at(cell, what, remedy));
  }

  /** What holds for many cells, told once, at the first of them. */
  void remarkOnce(Cell cell, Text what, Text remedy) {
    repeated.merge(
        what,
        new Repeated(cell, remedy, 1),
        (first, more) -> new Repeated(first.cell(), first.remedy(), first.cells() + 1));
  }

  /** A way to read the list that a person may choose. */
  void offer(Text description, ListOptions options) {
    waysOn.add(new WayOn(description, options));
  }

  private ListProblem at(Cell cell, Text what, Text remedy) {
    return ListProblem.of(source, cell.line(), cell.column(), what, remedy);
  }

  boolean hasProblems() {
    return !problems.isEmpty();
  }

  List<ListProblem> remarks() {
    var all = new ArrayList<>(remarks);
    repeated.forEach(
        (what, one) ->
            all.add(
                at(
                    one.cell(),
                    one.cells() == 1
                        ? what
                        : Text.of("{0}, and so {1} times more", what, one.cells() - 1),
                    one.remedy())));
    return ListReader.sorted(all);
  }

  List<ListProblem> leftOut() {
    return ListReader.sorted(leftOut);
  }

  ListReading.Refused refused() {
    return new ListReading.Refused(
        ListReader.sorted(problems), List.copyOf(waysOn), ListReading.ReadAs.NOTHING.with(table));
  }
}
