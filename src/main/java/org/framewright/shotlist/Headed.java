package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;

/** A grid whose row of headings was looked for, on its way to a shot list. */
final class Headed {
  /** Titles, dates and addresses above a list seldom take more lines. */
  private static final int LOOKED_AT = 40;

  private final Grid grid;
  private final String source;
  private final int header;
  private final List<Heading> meanings;

  private Headed(Grid grid, String source, int header) {
    this.grid = grid;
    this.source = source;
    this.header = header;
    this.meanings = header < 0 ? List.of() : meanings(grid.rows().get(header));
  }

  static Headed of(Grid grid, String source) {
    int best = -1;
    long most = 0;
    for (int i = 0; i < Math.min(LOOKED_AT, grid.rows().size()); i++) {
      var found = meanings(grid.rows().get(i));
      if (isOurs(grid.rows().get(i))) {
        return new Headed(grid, source, i);
      }
      if (found.contains(Heading.SETUP) && known(found) > most) {
        best = i;
        most = known(found);
      }
    }
    return new Headed(grid, source, best);
  }

  /** Whether a row begins as the one that the export writes. */
  private static boolean isOurs(List<Cell> row) {
    var ours = List.copyOf(ListWriter.HEADINGS.values());
    return row.stream().limit(ours.size()).map(Cell::text).toList().equals(ours);
  }

  /** How many different things the headings say. */
  private static long known(List<Heading> found) {
    var known = EnumSet.noneOf(Heading.class);
    known.addAll(found);
    known.remove(Heading.OTHER);
    return known.size();
  }

  /** How well the grid's separator fits: the headings known, then the rows as wide as them. */
  long fits() {
    if (header < 0) {
      return 0;
    }
    var row = grid.rows().get(header);
    if (isOurs(row)) {
      return Long.MAX_VALUE;
    }
    long alike = grid.rows().stream().filter(one -> one.size() == row.size()).count();
    return known(meanings) * 1_000_000 + Math.min(row.size(), 100) * 1_000L + Math.min(alike, 999);
  }

  /** Each column's meaning; of several that may mean one thing, the surest does. */
  private static List<Heading> meanings(List<Cell> row) {
    var plain = row.stream().map(Cell::plain).toList();
    var possible = plain.stream().map(Heading::meanings).toList();
    var meanings = new Heading[row.size()];
    Arrays.fill(meanings, Heading.OTHER);
    for (var wanted : Heading.values()) {
      int best = -1;
      int surest = Integer.MAX_VALUE;
      for (int i = 0; i < meanings.length; i++) {
        var rank = possible.get(i).get(wanted);
        if (meanings[i] != Heading.OTHER || rank == null) {
          continue;
        }
        // The very word that the export writes is surer than its like.
        int sure = plain.get(i).equals(ListWriter.HEADINGS.get(wanted)) ? -1 : rank;
        if (wanted == Heading.FROM_JOB) {
          meanings[i] = wanted;
        } else if (sure < surest) {
          best = i;
          surest = sure;
        }
      }
      if (best >= 0) {
        meanings[best] = wanted;
      }
    }
    return List.of(meanings);
  }

  /** Each column's own heading: one of its own where it has none or another's. */
  private List<String> headings() {
    var row = grid.rows().get(header);
    int width = grid.rows().stream().skip(header).mapToInt(List::size).max().orElse(0);
    var headings = new ArrayList<String>();
    var seen = new HashSet<String>();
    var next = new HashMap<String, Integer>();
    for (int i = 0; i < width; i++) {
      var text = i < row.size() ? row.get(i).plain() : "";
      var base = text.isEmpty() ? "column " + (i + 1) : text;
      var heading = base;
      // Counting on where the last one of this text stopped keeps 1,000 equal headings cheap.
      for (int n = next.getOrDefault(base, 2); !seen.add(heading); n++) {
        heading = base + " " + n;
        next.put(base, n + 1);
      }
      headings.add(heading);
    }
    return headings;
  }

  ListReading understand() {
    if (grid.excess().isPresent()) {
      return new ListReading.Refused(List.of(grid.excess().get()));
    }
    if (header < 0) {
      var problems = new ArrayList<>(grid.problems());
      problems.add(noHeader());
      return new ListReading.Refused(ListReader.sorted(problems));
    }
    var above = header > 0 ? grid.rows().get(header - 1) : List.<Cell>of();
    var rows = grid.rows().subList(header + 1, grid.rows().size());
    var headings = headings();
    var all = new ArrayList<>(meanings);
    all.addAll(Collections.nCopies(headings.size() - all.size(), Heading.OTHER));
    ViewColumns.take(all, headings, above, rows);
    var lines = new SetupLines(source, grid.rows().get(header), headings, all);
    grid.problems().forEach(lines::add);
    rows.forEach(lines::read);
    leftOutAbove().forEach(lines::addRemark);
    grid.remarks().forEach(lines::addRemark);
    var form = grid.form() + ", headings in line " + grid.rows().get(header).getFirst().line();
    return lines.reading(form);
  }

  private List<ListProblem> leftOutAbove() {
    return grid.rows().stream()
        .limit(header)
        .map(row -> row.stream().filter(cell -> !cell.blank()).findFirst())
        .flatMap(Optional::stream)
        .filter(cell -> !cell.text().startsWith("sep="))
        .map(
            cell ->
                ListProblem.of(
                    source,
                    cell.line(),
                    cell.column(),
                    "\"" + cell.brief() + "\" stands above the headings and is left out",
                    ""))
        .toList();
  }

  private ListProblem noHeader() {
    if (grid.rows().isEmpty()) {
      return ListProblem.ofAll(source, "the list is empty", "Give a list with a line of headings.");
    }
    var first = grid.rows().getFirst();
    var seen = first.stream().filter(cell -> !cell.blank()).map(Cell::brief).limit(6).toList();
    return ListProblem.of(
        source,
        first.getFirst().line(),
        first.getFirst().column(),
        "no line of headings with a setup in it was found; the first line reads "
            + String.join(" | ", seen),
        "Head the column that numbers the setups Setup, Look or No.");
  }
}
