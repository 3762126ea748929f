package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * Makes setups of the lines below the headings, and collects the first things wrong with them. A
 * setup has one line; or several, where somebody said so, where a merged cell or blank ones below
 * it say so, or where each names another view.
 */
final class SetupLines {
  /** A number, maybe with what it counts: {@code 24 looks}, {@code 1.200,00 EUR}. */
  private static final Pattern SUM = Pattern.compile("\\P{L}{1,40}\\p{L}{0,12}\\.?");

  /** The lines of one setup. */
  private static final class Lines {
    private final Cell code;
    private final List<List<Cell>> rows = new ArrayList<>();

    /** Whether the list itself says that they belong together. */
    private boolean together;

    Lines(Cell code) {
      this.code = code;
    }
  }

  private final ListColumns columns;
  private final ListRequest request;
  private final ListNotes notes;
  private final SetupMaker maker;
  private final CodeCheck codes;
  private final List<String> heads;
  private final int code;
  private final int title;

  /** The column whose equal cells make lines one setup; the setup's own where nobody chose one. */
  private final int merging;

  private final Map<String, Lines> lines = new LinkedHashMap<>();
  private Lines last;
  private int rows;

  SetupLines(ListColumns columns, ListRequest request, ListNotes notes) {
    this.columns = columns;
    this.request = request;
    this.notes = notes;
    this.maker = new SetupMaker(columns, notes);
    this.heads = columns.header().stream().map(Cell::plain).toList();
    this.code = columns.of(Heading.SETUP);
    this.title = columns.of(Heading.TITLE);
    this.codes = new CodeCheck(columns.headings().get(code), request.options(), notes);
    this.merging =
        request.options().merging().map(this::column).filter(column -> column >= 0).orElse(code);
  }

  private int column(String heading) {
    for (int i = 0; i < columns.headings().size(); i++) {
      if (Heading.plain(columns.headings().get(i)).equals(Heading.plain(heading))) {
        return i;
      }
    }
    return -1;
  }

  private boolean isMerging() {
    return request.options().merging().isPresent();
  }

  void read(List<Cell> row) {
    var cell = cell(row, code);
    var first = row.stream().filter(one -> !one.blank()).findFirst().orElse(cell);
    if (repeatsHeadings(row)) {
      notes.leaveOut(
          row.getFirst(), Text.of("the headings are repeated here, left out"), Text.NONE);
    } else if (isTotal(row, first)) {
      notes.leaveOut(
          first, Text.of("\"{0}\" is a line of sums, left out", first.brief()), Text.NONE);
    } else if (codes.isUnreadable(cell)) {
      return;
    } else if (cell.blank() && !continues(row)) {
      withoutCode(row, cell);
    } else if (!cell.blank() && isSectionName(row, cell)) {
      notes.leaveOut(
          cell,
          Text.of("\"{0}\" stands alone in its line and is left out", cell.brief()),
          Text.of("If it is a setup, give it a title or a number."));
    } else {
      withCode(row, cell);
    }
  }

  private static Cell cell(List<Cell> row, int column) {
    return column < row.size() ? row.get(column) : new Cell("", row.getFirst().line(), 0);
  }

  private boolean repeatsHeadings(List<Cell> row) {
    return row.size() == heads.size()
        && !heads.isEmpty()
        && row.get(code).plain().equals(heads.get(code))
        && row.stream().map(Cell::plain).toList().equals(heads);
  }

  /** A line that begins {@code Total} and holds nothing but numbers besides. */
  private boolean isTotal(List<Cell> row, Cell first) {
    if (!Vocabulary.WORDS.isTotal(first.plain())) {
      return false;
    }
    return row.stream()
        .filter(one -> one.column() != first.column() && !one.blank())
        .map(Cell::plain)
        .allMatch(text -> SUM.matcher(text).matches() || Vocabulary.WORDS.isTotal(text));
  }

  /** Whether a line without a code goes on with the setup above it. */
  private boolean continues(List<Cell> row) {
    if (last == null || !cell(row, merging).blank()) {
      return merging != code && !cell(row, merging).blank();
    }
    if (isMerging()) {
      return true;
    }
    int views = columns.of(Heading.VIEWS);
    return views >= 0 && !cell(row, views).blank() && (title < 0 || cell(row, title).blank());
  }

  private void withCode(List<Cell> row, Cell cell) {
    rows++;
    var key = Setup.canonicalKey(cell(row, merging).plain());
    if (key.isEmpty()) {
      last.rows.add(row);
      last.together = true;
      return;
    }
    var there = lines.get(key);
    if (there == null) {
      last = new Lines(cell);
      lines.put(key, last);
      codes.look(cell);
    } else {
      last = there;
      there.together |= cell.kind() == Cell.Kind.CARRIED;
    }
    last.rows.add(row);
  }

  /** Whether a line only names the setups that follow, such as {@code Dresses}. */
  private boolean isSectionName(List<Cell> row, Cell cell) {
    return title >= 0
        && row.stream().filter(one -> !one.blank()).count() == 1
        && cell.plain().chars().noneMatch(Character::isDigit);
  }

  private void withoutCode(List<Cell> row, Cell cell) {
    var filledCells = row.stream().filter(one -> !one.blank()).toList();
    boolean titled = title >= 0 && title < row.size() && !row.get(title).blank();
    if (filledCells.size() == 1 && !titled) {
      notes.leaveOut(
          filledCells.getFirst(),
          Text.of(
              "\"{0}\" stands alone in its line and is left out", filledCells.getFirst().brief()),
          Text.of("If it is a setup, give it a number."));
      return;
    }
    var heading = columns.headings().get(code);
    notes.problem(
        cell,
        Text.of("this line has no setup in the column \"{0}\"", Cell.brief(heading)),
        Text.of("Number it, or take the line out."));
    if (last != null) {
      offerMerging(heading);
    }
  }

  private void offerMerging(String heading) {
    notes.offer(
        Text.of("one setup for each \"{0}\", of all its lines", Cell.brief(heading)),
        request.options().withOneSetupPer(heading));
  }

  /**
   * What came of all the lines.
   *
   * @param form in words
   */
  ListReading reading(Text form) {
    if (lines.isEmpty() && !notes.hasProblems()) {
      notes.problem(
          columns.header().isEmpty() ? new Cell("", 0, 0) : columns.header().getFirst(),
          Text.of("there is no setup below the headings"),
          Text.of("Give a list with one setup a line."));
    }
    codes.end(lines.size());
    var setups = new ArrayList<Setup>();
    var checks = new FitCheck(columns, request, notes);
    var seen = new HashMap<String, Cell>();
    for (var one : lines.values()) {
      if (isOne(one) && isNew(one, seen)) {
        var setup = maker.make(one.code.plain(), one.rows);
        checks.check(setup, one.code, one.rows.getFirst());
        setups.add(setup);
      }
    }
    tellMerged();
    checks.end(lines.values().stream().map(one -> one.rows.getFirst()).toList());
    if (notes.hasProblems()) {
      return notes.refused();
    }
    return new ListReading.Understood(
        new ShotList(setups),
        form,
        ListReading.ReadAs.NOTHING.with(notes.table()),
        notes.remarks(),
        notes.leftOut());
  }

  /** Where another column makes lines one setup, two of those may still have one code. */
  private boolean isNew(Lines one, Map<String, Cell> seen) {
    if (one.code.blank()) {
      notes.problem(
          one.code,
          Text.of(
              "this line has no setup in the column \"{0}\"",
              Cell.brief(columns.headings().get(code))),
          Text.of("Number it, or take the line out."));
      return false;
    }
    var other = seen.putIfAbsent(Setup.canonicalKey(one.code.plain()), one.code);
    if (other != null) {
      repeats(one.code, other);
    }
    return other == null;
  }

  private boolean isOne(Lines one) {
    if (one.rows.size() == 1 || isMerging() || one.together || nameViews(one)) {
      return true;
    }
    for (var row : one.rows.subList(1, one.rows.size())) {
      repeats(cell(row, code), one.code);
    }
    offerMerging(columns.headings().get(code));
    return true;
  }

  private void repeats(Cell cell, Cell other) {
    if (other.plain().equals(cell.plain())) {
      notes.problem(
          cell,
          Text.of("setup {0} stands in line {1} already", cell.brief(), other.line()),
          Text.of("Give one of the two another number, or make one line of them."));
    } else {
      notes.problem(
          cell,
          Text.of(
              "setup {0} looks the same as {1} in line {2}: case and leading zeros do not count",
              cell.brief(), other.brief(), other.line()),
          Text.of("Give one of the two another number."));
    }
  }

  /** Whether each line is one shot: the same setup and title, and another view. */
  private boolean nameViews(Lines one) {
    int views = columns.of(Heading.VIEWS);
    if (views < 0) {
      return false;
    }
    var named = new HashSet<String>();
    var titles = new HashSet<String>();
    for (var row : one.rows) {
      var view = Heading.plain(cell(row, views).plain());
      if (view.isEmpty() || !named.add(view) || !cell(row, code).plain().equals(one.code.plain())) {
        return false;
      }
      if (title >= 0 && !cell(row, title).blank()) {
        titles.add(cell(row, title).plain());
      }
    }
    return titles.size() <= 1;
  }

  private void tellMerged() {
    if (rows > lines.size() && !notes.hasProblems()) {
      var first = lines.values().stream().filter(one -> one.rows.size() > 1).findFirst();
      notes.remark(
          first.orElseThrow().code,
          Text.of(
              "{0} lines were put together to {1}",
              rows, Text.counted("{0} setup", "{0} setups", lines.size())),
          Text.NONE);
    }
  }
}
