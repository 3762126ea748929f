package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** A list that was read, and what it changes, in words: a line each, of people's own text too. */
public final class ListDescription {
  private static final int MOST_REMARKS = 20;

  private ListDescription() {}

  /** How a client's list was understood, and the first of what was left out or guessed. */
  public static List<String> understood(ListReading.Understood reading) {
    var lines = new ArrayList<String>();
    lines.add("Read as " + reading.form().english() + ".");
    reading.columns().forEach(column -> lines.add("  " + column));
    var remarks = reading.told();
    remarks.stream()
        .limit(MOST_REMARKS)
        .map(ListProblem::onCommandLine)
        .map(Problem::sentences)
        .forEach(lines::add);
    if (remarks.size() > MOST_REMARKS) {
      lines.add((remarks.size() - MOST_REMARKS) + " more like these.");
    }
    return List.copyOf(lines);
  }

  /** Ways to read a list that was refused, each with what to add to the command. */
  public static List<String> waysOn(ListReading.Refused refused) {
    var lines = new ArrayList<String>();
    refused
        .waysOn()
        .forEach(
            way -> {
              if (lines.isEmpty()) {
                lines.add("It may be read so; add what stands behind:");
              }
              lines.add("  " + way.description() + ": " + way.options().words());
            });
    return List.copyOf(lines);
  }

  /**
   * What a list changes, setup by setup, then in numbers.
   *
   * @param preview whether nothing was changed yet
   */
  public static List<String> changes(ListChange change, boolean preview) {
    if (change.isEmpty()) {
      return List.of("The list is the one that the job has.");
    }
    var lines = new ArrayList<String>();
    change.added().forEach(setup -> lines.add("added    " + named(setup)));
    change
        .changed()
        .forEach(
            changed ->
                lines.add(
                    "changed  "
                        + changed.after().code()
                        + ": "
                        + changed.descriptions().stream()
                            .map(Text::english)
                            .collect(Collectors.joining("; "))));
    change.removed().forEach(setup -> lines.add("removed  " + named(setup)));
    change
        .kept()
        .forEach(
            setup ->
                lines.add(
                    "kept     " + named(setup) + " (no longer in the list, but it was worked on)"));
    if (change.reordered()) {
      lines.add("The order changes.");
    }
    lines.add(
        change.added().size()
            + " added, "
            + change.changed().size()
            + " changed, "
            + change.removed().size()
            + " removed, "
            + change.kept().size()
            + " kept."
            + (preview ? " Nothing was changed yet." : ""));
    return List.copyOf(lines);
  }

  /** A setup as people call it: its code, and its title if it has one. */
  public static String named(Setup setup) {
    return setup.code() + (setup.title().isEmpty() ? "" : " " + setup.title());
  }
}
