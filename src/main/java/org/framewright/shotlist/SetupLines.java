package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;

/** Makes setups of the lines below the headings, and collects the first things wrong with them. */
final class SetupLines {
  /** A number, maybe with what it counts. */
  private static final Pattern NUMBER = Pattern.compile("(\\d{1,4})\\s*\\p{L}{0,8}\\.?");

  private static final char REPLACEMENT = '\uFFFD';

  private final String source;
  private final List<Cell> header;
  private final List<String> heads;
  private final List<String> headings;
  private final List<Heading> meanings;
  private final int code;
  private final int title;
  private final Set<Integer> filled = new HashSet<>();
  private final Map<String, Cell> seen = new HashMap<>();
  private final List<Setup> setups = new ArrayList<>();
  private final List<ListProblem> problems = new ArrayList<>();
  private final List<ListProblem> remarks = new ArrayList<>();

  /**
   * @param header the row of headings
   * @param headings each column's own
   * @param meanings each column's; one of them is the setup
   */
  SetupLines(String source, List<Cell> header, List<String> headings, List<Heading> meanings) {
    this.source = source;
    this.header = header;
    this.heads = header.stream().map(Cell::plain).toList();
    this.headings = List.copyOf(headings);
    this.meanings = List.copyOf(meanings);
    this.code = meanings.indexOf(Heading.SETUP);
    this.title = meanings.indexOf(Heading.TITLE);
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

  /** What came of all the lines. */
  ListReading reading(String form) {
    if (setups.isEmpty() && problems.isEmpty()) {
      problem(
          header.getFirst(),
          "there is no setup below the headings",
          "Give a list with one setup a line.");
    }
    if (!problems.isEmpty()) {
      return new ListReading.Refused(ListReader.sorted(problems));
    }
    return new ListReading.Understood(
        new ShotList(setups), form, columns(), ListReader.sorted(remarks));
  }

  private List<Column> columns() {
    var columns = new ArrayList<Column>();
    for (int i = 0; i < headings.size(); i++) {
      if (isHeaded(i) || filled.contains(i)) {
        columns.add(new Column(i + 1, headings.get(i), meanings.get(i)));
      }
    }
    return columns;
  }

  private boolean isHeaded(int column) {
    return column < header.size() && !header.get(column).blank();
  }

  void read(List<Cell> row) {
    for (int i = 0; i < row.size(); i++) {
      if (!row.get(i).blank()) {
        filled.add(i);
      }
    }
    var cell = code < row.size() ? row.get(code) : new Cell("", row.getFirst().line(), 0);
    if (repeatsHeadings(row)) {
      remark(row.getFirst(), "the headings are repeated here, left out", "");
    } else if (cell.blank()) {
      withoutCode(row, cell);
    } else if (isSectionName(row, cell)) {
      remark(
          cell,
          "\"" + cell.brief() + "\" stands alone in its line and is left out",
          "If it is a setup, give it a title or a number.");
    } else {
      withCode(row, cell);
    }
  }

  private boolean repeatsHeadings(List<Cell> row) {
    return row.size() == heads.size()
        && row.get(code).plain().equals(heads.get(code))
        && row.stream().map(Cell::plain).toList().equals(heads);
  }

  private void withCode(List<Cell> row, Cell cell) {
    var other = seen.putIfAbsent(Setup.canonicalKey(cell.plain()), cell);
    if (other == null) {
      setups.add(setup(cell.plain(), row));
    } else if (other.plain().equals(cell.plain())) {
      problem(
          cell,
          "setup " + cell.brief() + " stands in line " + other.line() + " already",
          "Give one of the two another number, or make one line of them.");
    } else {
      problem(
          cell,
          "setup "
              + cell.brief()
              + " looks the same as "
              + other.brief()
              + " in line "
              + other.line()
              + ": case and leading zeros do not count",
          "Give one of the two another number.");
    }
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
      remark(
          filledCells.getFirst(),
          "\"" + filledCells.getFirst().brief() + "\" stands alone in its line and is left out",
          "If it is a setup, give it a number.");
    } else {
      problem(
          cell,
          "this line has no setup in the column \"" + Cell.brief(headings.get(code)) + "\"",
          "Number it, or take the line out.");
    }
  }

  private Setup setup(String codeText, List<Cell> row) {
    var titleText = "";
    var columns = new LinkedHashMap<String, String>();
    var views = new LinkedHashMap<String, View>();
    var frames = OptionalInt.empty();
    for (int i = 0; i < headings.size(); i++) {
      var cell = i < row.size() ? row.get(i) : new Cell("", row.getFirst().line(), i + 1);
      if (cell.text().indexOf(REPLACEMENT) >= 0) {
        remark(
            cell,
            "a letter of \"" + cell.brief() + "\" could not be read",
            "Save the list as UTF-8 or .xlsx and import it again.");
      }
      switch (meanings.get(i)) {
        case SETUP, FROM_JOB -> {}
        case TITLE -> titleText = cell.plain();
        case VIEWS -> ViewsText.read(cell.text()).forEach(view -> add(cell, view, views));
        case VIEW -> viewInColumn(headings.get(i), cell, views);
        case FRAMES -> {
          var number = number(cell);
          if (number.isPresent()) {
            frames = number;
          } else if (!cell.blank()) {
            columns.put(headings.get(i), cell.text().strip());
          }
        }
        case DAY, RACK, MODEL, NOTE, OTHER -> {
          if (isHeaded(i) || !cell.blank()) {
            columns.put(headings.get(i), cell.text().strip());
          }
        }
      }
    }
    return new Setup(codeText, titleText, List.copyOf(views.values()), frames, columns);
  }

  private OptionalInt number(Cell cell) {
    if (cell.blank() || cell.plain().equals("-")) {
      return OptionalInt.empty();
    }
    var number = NUMBER.matcher(cell.plain());
    if (number.matches()) {
      int frames = Integer.parseInt(number.group(1));
      return frames > 0 ? OptionalInt.of(frames) : OptionalInt.empty();
    }
    remark(
        cell,
        "\"" + cell.brief() + "\" is no number of frames; it is kept as text",
        "Write a number such as 12.");
    return OptionalInt.empty();
  }

  private void viewInColumn(String heading, Cell cell, Map<String, View> views) {
    if (cell.blank()) {
      return;
    }
    var number = NUMBER.matcher(cell.plain());
    if (!number.matches()) {
      add(cell, new View(heading), views);
      return;
    }
    int frames = Integer.parseInt(number.group(1));
    if (frames > 0) {
      add(cell, new View(heading, OptionalInt.of(frames)), views);
    }
  }

  private void add(Cell cell, View view, Map<String, View> views) {
    if (views.putIfAbsent(view.code().toLowerCase(Locale.ROOT), view) != null) {
      remark(cell, "the view " + Cell.brief(view.code()) + " is named twice", "");
    }
  }

  private void problem(Cell cell, String what, String remedy) {
    add(ListProblem.of(source, cell.line(), cell.column(), what, remedy));
  }

  private void remark(Cell cell, String what, String remedy) {
    addRemark(ListProblem.of(source, cell.line(), cell.column(), what, remedy));
  }
}
