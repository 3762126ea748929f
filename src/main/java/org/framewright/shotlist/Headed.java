package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.framewright.base.Text;

/** A grid whose row of headings was looked for, on its way to a shot list. */
final class Headed {
  /** Titles, dates and addresses above a list seldom take more lines. */
  private static final int LOOKED_AT = 40;

  /** What fits at least as well is a list. */
  static final long A_LIST = 1_000;

  /** What a column without a heading is called. */
  private static final Pattern BY_POSITION = Pattern.compile("(?i)column \\d{1,4}");

  private static final Text HEAD_IT =
      Text.of("Head the column that numbers the setups Setup, Look or No., or say which it is.");

  private final Grid grid;
  private final String source;
  private final ListRequest request;
  private final int header;
  private final List<Heading> meanings;

  /** What the list is where it has no headings; nothing where it has. */
  private final Optional<Headless> headless;

  private Headed(Grid grid, String source, ListRequest request, int header) {
    this.grid = grid;
    this.source = source;
    this.request = request;
    this.header = header;
    this.meanings = header < 0 ? List.of() : ColumnMeanings.of(grid.rows().get(header), request);
    this.headless =
        header < 0 ? Optional.of(Headless.of(grid.rows(), request.fit())) : Optional.empty();
  }

  static Headed of(Grid grid, String source, ListRequest request) {
    int named = -1;
    long mostNamed = 0;
    int best = -1;
    long most = 0;
    for (int i = 0; i < Math.min(LOOKED_AT, grid.rows().size()); i++) {
      var row = grid.rows().get(i);
      long names = named(row, request);
      if (names > mostNamed) {
        named = i;
        mostNamed = names;
      }
      if (isOurs(row) && mostNamed == 0) {
        return new Headed(grid, source, request, i);
      }
      var found = ColumnMeanings.of(row, request);
      long known = ColumnMeanings.known(found);
      if (found.contains(Heading.SETUP) && known > most) {
        best = i;
        most = known;
      }
    }
    return new Headed(grid, source, request, mostNamed > 0 ? named : best);
  }

  /** Whether a row begins as the one that the export writes. */
  private static boolean isOurs(List<Cell> row) {
    var ours = List.copyOf(ListWriter.HEADINGS.values());
    return row.stream().limit(ours.size()).map(Cell::text).toList().equals(ours);
  }

  /** How many of the headings that a person names stand in a row. */
  private static long named(List<Cell> row, ListRequest request) {
    var options = request.options();
    if (options.columns().isEmpty() && options.uses().isEmpty() && options.merging().isEmpty()) {
      return 0;
    }
    var wanted = new HashSet<String>();
    options.uses().keySet().forEach(heading -> wanted.add(Heading.plain(heading)));
    request.options().columns().values().forEach(heading -> wanted.add(Heading.plain(heading)));
    request.options().merging().ifPresent(heading -> wanted.add(Heading.plain(heading)));
    wanted.remove("");
    long before = wanted.size();
    row.forEach(cell -> wanted.remove(Heading.plain(cell.plain())));
    return before - wanted.size();
  }

  /** How well the grid's separator fits: the headings known, then the rows as wide as them. */
  long fits() {
    if (header < 0) {
      boolean isList = headless.isPresent() && headless.get().isSure();
      int width = Math.min(width(0), 100);
      long alike = grid.rows().stream().filter(one -> one.size() == width).count();
      boolean isRegular = width > 1 && alike * 2 > grid.rows().size();
      return isList ? A_LIST + width : isRegular ? width : 0;
    }
    var row = grid.rows().get(header);
    if (isOurs(row)) {
      return Long.MAX_VALUE;
    }
    long alike = grid.rows().stream().filter(one -> one.size() == row.size()).count();
    return named(row, request) * 1_000_000_000
        + ColumnMeanings.known(meanings) * 1_000_000
        + Math.min(row.size(), 100) * 1_000L
        + Math.min(alike, 999);
  }

  /** How many different things the headings say. */
  long known() {
    return ColumnMeanings.known(meanings);
  }

  private int width(int from) {
    return grid.rows().stream().skip(from).mapToInt(List::size).max().orElse(0);
  }

  /** Each column's own heading: one of its own where it has none or another's. */
  private List<String> headings(List<Cell> row, int from) {
    int width = width(from);
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
    var notes = new ListNotes(source);
    grid.problems().forEach(notes::add);
    grid.remarks().forEach(notes::addRemark);
    if (grid.rows().isEmpty()) {
      notes.add(
          ListProblem.ofAll(
              source,
              Text.of("the list is empty"),
              Text.of("Give a list with a line of headings.")));
      return notes.refused();
    }
    return header < 0 ? withoutHeadings(notes) : withHeadings(notes);
  }

  private ListReading withHeadings(ListNotes notes) {
    var row = grid.rows().get(header);
    var rows = grid.rows().subList(header + 1, grid.rows().size());
    var headings = headings(row, header);
    var columns = new ColumnMeanings(row, headings, rows, request, notes);
    var all = columns.meanings();
    var above = header > 0 ? grid.rows().get(header - 1) : List.<Cell>of();
    var taken = ViewColumns.take(all, headings, row, above, rows, request.fit(), notes);
    leftOutBefore(Math.max(0, header - 1), true, notes);
    taken.unused(above).ifPresent(cell -> leftOut(cell, true, notes));
    var understood = new ListColumns(row, headings, all, columns.fields(), taken.views());
    found(understood, row.stream().map(Cell::plain).toList(), rows, notes);
    if (columns.isRefused()) {
      return notes.refused();
    }
    if (!all.contains(Heading.SETUP)) {
      if (!notes.hasProblems()) {
        notes.problem(
            row.getFirst(),
            Text.of("none of these headings is known to be the setup: {0}", read(row)),
            HEAD_IT,
            "--column setup=HEADING");
      }
      offer(headings, rows, notes);
      return notes.refused();
    }
    var lines = new SetupLines(understood, request, notes);
    rows.forEach(lines::read);
    return lines.reading(
        Text.of("{0}, headings in line {1}", grid.form(), String.valueOf(row.getFirst().line())));
  }

  /** What of the list a person may look at, whatever becomes of it. */
  private void found(
      ListColumns columns, List<String> asWritten, List<List<Cell>> rows, ListNotes notes) {
    var filled = new BitSet();
    for (var row : rows) {
      for (int i = 0; i < row.size(); i++) {
        if (!filled.get(i) && !row.get(i).blank()) {
          filled.set(i);
        }
      }
    }
    notes.found(ListTable.of(asWritten, columns.columns(filled, request), rows));
  }

  /** What is found where it is not known what a column is. */
  private void foundUnknown(
      List<Cell> row, List<String> headings, List<List<Cell>> rows, ListNotes notes) {
    var meanings = Collections.nCopies(headings.size(), Heading.OTHER);
    found(new ListColumns(row, headings, meanings, Map.of(), Map.of()), List.of(), rows, notes);
  }

  private ListReading withoutHeadings(ListNotes notes) {
    var guess = headless.orElseThrow();
    boolean isNamed =
        Stream.concat(
                request.options().columns().values().stream(),
                request.options().uses().keySet().stream())
            .allMatch(BY_POSITION.asMatchPredicate());
    boolean isChosen = isNamed && request.options().columns().containsKey("setup");
    int first = isChosen ? 0 : guess.first();
    if (!isChosen && (!guess.isSure() || !isNamed)) {
      var row = grid.rows().get(Math.min(guess.first(), grid.rows().size() - 1));
      notes.problem(
          grid.rows().getFirst().getFirst(),
          Text.of(
              "no line of headings with a setup in it was found; the first line reads {0}",
              read(grid.rows().getFirst())),
          HEAD_IT,
          "--column setup=HEADING");
      int from = Math.min(guess.first(), grid.rows().size());
      if (guess.isHeaded() || guess.setups().isEmpty()) {
        var headings = headings(row, from);
        var below = grid.rows().subList(Math.min(from + 1, grid.rows().size()), grid.rows().size());
        foundUnknown(row, headings, below, notes);
        offer(headings, below, notes);
      } else {
        var rows = grid.rows().subList(from, grid.rows().size());
        foundUnknown(List.of(), headings(List.of(), from), rows, notes);
        guess.setups().forEach(column -> offer("column " + (column + 1), notes));
      }
      return notes.refused();
    }
    var rows = grid.rows().subList(first, grid.rows().size());
    var headings = headings(List.of(), first);
    var columns = new ColumnMeanings(List.of(), headings, rows, request, notes);
    var all = columns.meanings();
    if (columns.isRefused()) {
      foundUnknown(List.of(), headings, rows, notes);
      return notes.refused();
    }
    if (!isChosen) {
      var guessed = guess.meanings(headings.size());
      for (int i = 0; i < all.size(); i++) {
        if (all.get(i) == Heading.OTHER && !all.contains(guessed.get(i))) {
          all.set(i, guessed.get(i));
        }
      }
    }
    leftOutBefore(first, false, notes);
    notes.remark(
        rows.getFirst().getFirst(),
        Text.of("the list has no headings; what its columns are was taken from their cells"),
        Text.of("Where that is wrong, say what a column is."),
        "--column title=\"column 3\"");
    var taken = ViewColumns.take(all, headings, List.of(), List.of(), rows, request.fit(), notes);
    var understood = new ListColumns(List.of(), headings, all, columns.fields(), taken.views());
    found(understood, List.of(), rows, notes);
    var lines = new SetupLines(understood, request, notes);
    rows.forEach(lines::read);
    return lines.reading(Text.of("{0}, no headings", grid.form()));
  }

  /** Offers the columns whose cells look like codes. */
  private void offer(List<String> headings, List<List<Cell>> rows, ListNotes notes) {
    for (int i = 0; i < headings.size(); i++) {
      var values = ColumnValues.of(rows, i, request.fit());
      if (values.areCodes() && values.fits()) {
        offer(headings.get(i), notes);
      }
    }
  }

  private void offer(String heading, ListNotes notes) {
    notes.offer(
        Text.of("the setup from \"{0}\"", Cell.brief(heading)),
        request.options().withColumn("setup", heading));
  }

  private void leftOutBefore(int first, boolean isHeaded, ListNotes notes) {
    grid.rows().stream()
        .limit(first)
        .map(row -> row.stream().filter(cell -> !cell.blank()).findFirst())
        .flatMap(Optional::stream)
        .forEach(cell -> leftOut(cell, isHeaded, notes));
  }

  private static void leftOut(Cell cell, boolean isHeaded, ListNotes notes) {
    if (!cell.text().startsWith("sep=")) {
      notes.leaveOut(
          cell,
          Text.of(
              isHeaded
                  ? "\"{0}\" stands above the headings and is left out"
                  : "\"{0}\" stands above the list and is left out",
              cell.brief()),
          Text.NONE);
    }
  }

  private static String read(List<Cell> row) {
    return String.join(
        " | ", row.stream().filter(cell -> !cell.blank()).map(Cell::brief).limit(6).toList());
  }
}
