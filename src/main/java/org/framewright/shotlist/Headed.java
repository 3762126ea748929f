package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A grid whose row of headings was looked for, on its way to a shot list. */
final class Headed {
  /** Titles, dates and addresses above a list seldom take more lines. */
  private static final int LOOKED_AT = 40;

  private static final Pattern MARK =
      Pattern.compile("x|✓|✔|✗|•|\\*|yes|y|ja|oui|si|sì|sí|\\d{1,4}", Pattern.CASE_INSENSITIVE);

  private static final Set<String> VIEW_WORDS =
      Set.of(
          "f",
          "b",
          "s",
          "d",
          "front",
          "back",
          "side",
          "left",
          "right",
          "top",
          "detail",
          "details",
          "profile",
          "close",
          "full",
          "vorne",
          "hinten",
          "seite",
          "avant",
          "dos",
          "cote",
          "frente",
          "espalda",
          "lado",
          "fronte",
          "retro",
          "lato",
          "voor",
          "achter",
          "zij",
          "fram",
          "bak",
          "sida",
          "vorderansicht",
          "ruckansicht",
          "seitenansicht");

  /** A number, maybe with what it counts. */
  private static final Pattern NUMBER = Pattern.compile("(\\d{1,4})\\s*\\p{L}{0,8}\\.?");

  /**
   * The signs and words by which lists give a view its number: {@code F:8}, {@code F x 8}, {@code F
   * (8)}.
   */
  private static final Pattern COUNTED =
      Pattern.compile("\\s*[:=×*]\\s*(?=\\d)|\\s+[xX]\\s*(?=\\d)|\\s*\\((?=\\d+\\))");

  private static final Pattern VIEW = Pattern.compile("(.+?):(\\d{1,4})\\)?");

  private final Grid grid;
  private final String source;
  private final int header;
  private final List<Heading> taken;
  private final List<String> headings;
  private final List<Fault> faults;
  private final List<Fault> remarks = new ArrayList<>();

  private Headed(Grid grid, String source, int header) {
    this.grid = grid;
    this.source = source;
    this.header = header;
    this.faults = new ArrayList<>(grid.faults());
    this.headings = header < 0 ? List.of() : headings();
    this.taken = header < 0 ? List.of() : taken(grid.rows().get(header));
  }

  static Headed of(Grid grid, String source) {
    int best = -1;
    long most = 0;
    for (int i = 0; i < Math.min(LOOKED_AT, grid.rows().size()); i++) {
      var found = taken(grid.rows().get(i));
      long known = found.stream().filter(heading -> heading != Heading.OTHER).count();
      if (found.contains(Heading.SETUP) && known > most) {
        best = i;
        most = known;
      }
    }
    return new Headed(grid, source, best);
  }

  /** How well the grid's separator fits: the headings known, then the rows as wide as them. */
  long fits() {
    if (header < 0) {
      return 0;
    }
    int width = grid.rows().get(header).size();
    long alike = grid.rows().stream().filter(row -> row.size() == width).count();
    long known = taken.stream().filter(heading -> heading != Heading.OTHER).count();
    return known * 1_000_000 + Math.min(width, 100) * 1_000L + Math.min(alike, 999);
  }

  /** Each column's meaning; of several that may mean one thing, the surest does. */
  private static List<Heading> taken(List<Cell> row) {
    var taken = new Heading[row.size()];
    Arrays.fill(taken, Heading.OTHER);
    for (var wanted : Heading.values()) {
      int best = -1;
      int rank = Integer.MAX_VALUE;
      for (int i = 0; i < taken.length; i++) {
        var sure = Heading.rank(row.get(i).plain(), wanted);
        if (taken[i] != Heading.OTHER || sure.isEmpty()) {
          continue;
        }
        if (wanted == Heading.TOLD) {
          taken[i] = wanted;
        } else if (sure.getAsInt() < rank) {
          best = i;
          rank = sure.getAsInt();
        }
      }
      if (best >= 0) {
        taken[best] = wanted;
      }
    }
    return new ArrayList<>(Arrays.asList(taken));
  }

  /** Each column's own heading: one of its own where it has none or another's. */
  private List<String> headings() {
    var row = grid.rows().get(header);
    int width = grid.rows().stream().skip(header).mapToInt(List::size).max().orElse(0);
    var headings = new ArrayList<String>();
    var seen = new HashSet<String>();
    for (int i = 0; i < width; i++) {
      var text = i < row.size() ? row.get(i).plain() : "";
      var base = text.isEmpty() ? "column " + (i + 1) : text;
      var heading = base;
      for (int n = 2; !seen.add(heading); n++) {
        heading = base + " " + n;
      }
      headings.add(heading);
    }
    return headings;
  }

  ListReading understand() {
    if (header < 0) {
      faults.add(noHeader());
      return new ListReading.Refused(ListReader.sorted(faults));
    }
    while (taken.size() < headings.size()) {
      taken.add(Heading.OTHER);
    }
    takeViewsInColumns();
    var columns = new ArrayList<Column>();
    for (int i = 0; i < headings.size(); i++) {
      if (headed(i) || rows().anyMatch(cellIs(i))) {
        columns.add(new Column(i + 1, headings.get(i), taken.get(i)));
      }
    }
    for (int i = 0; i < header; i++) {
      grid.rows().get(i).stream()
          .filter(cell -> !cell.blank() && !cell.text().startsWith("sep="))
          .findFirst()
          .ifPresent(
              cell ->
                  remark(
                      cell,
                      "\"" + cell.plain() + "\" stands above the headings and is left out",
                      ""));
    }
    var setups = setups();
    if (setups.isEmpty() && faults.isEmpty()) {
      var cell = grid.rows().get(header).getFirst();
      fault(cell, "there is no setup below the headings", "Give a list with one setup a line.");
    }
    if (!faults.isEmpty()) {
      return new ListReading.Refused(ListReader.sorted(faults));
    }
    var form = grid.form() + ", headings in line " + grid.rows().get(header).getFirst().line();
    return new ListReading.Understood(
        new ShotList(setups), form, columns, ListReader.sorted(remarks));
  }

  private boolean headed(int column) {
    var row = grid.rows().get(header);
    return column < row.size() && !row.get(column).blank();
  }

  private Stream<List<Cell>> rows() {
    return grid.rows().stream().skip(header + 1L);
  }

  private static Predicate<List<Cell>> cellIs(int column) {
    return row -> column < row.size() && !row.get(column).blank();
  }

  private Fault noHeader() {
    if (grid.rows().isEmpty()) {
      return new Fault(source, 0, 0, "the list is empty", "Give a list with a line of headings.");
    }
    var first = grid.rows().getFirst();
    var seen = first.stream().filter(cell -> !cell.blank()).map(Cell::plain).limit(6).toList();
    return new Fault(
        source,
        first.getFirst().line(),
        first.getFirst().column(),
        "no line of headings with a setup in it was found; the first line reads "
            + String.join(" | ", seen),
        "Head the column that numbers the setups Setup, Look or No.");
  }

  /** A list may have one column a view, with a cross or a number where it is wanted. */
  private void takeViewsInColumns() {
    if (taken.contains(Heading.VIEWS)) {
      return;
    }
    var above = header > 0 ? grid.rows().get(header - 1) : List.<Cell>of();
    var group = "";
    for (int i = 0; i < headings.size(); i++) {
      if (i < above.size() && !above.get(i).blank()) {
        group = above.get(i).plain();
      }
      boolean named =
          VIEW_WORDS.contains(Heading.plain(headings.get(i))) || Heading.of(group) == Heading.VIEWS;
      int column = i;
      boolean marks =
          rows().anyMatch(cellIs(i))
              && rows()
                  .filter(cellIs(i))
                  .allMatch(row -> MARK.matcher(row.get(column).plain()).matches());
      if (taken.get(i) == Heading.OTHER && named && marks) {
        taken.set(i, Heading.VIEW);
      }
    }
  }

  private List<Setup> setups() {
    var setups = new ArrayList<Setup>();
    var seen = new HashMap<String, Cell>();
    int code = taken.indexOf(Heading.SETUP);
    var heads = grid.rows().get(header).stream().map(Cell::plain).toList();
    rows()
        .forEach(
            row -> {
              if (row.stream().map(Cell::plain).toList().equals(heads)) {
                remark(row.getFirst(), "the headings are repeated here, left out", "");
                return;
              }
              var cell = code < row.size() ? row.get(code) : new Cell("", row.getFirst().line(), 0);
              if (cell.blank()) {
                withoutCode(row, cell);
                return;
              }
              if (names(row, cell)) {
                remark(
                    cell,
                    "\"" + cell.plain() + "\" stands alone in its line and is left out",
                    "If it is a setup, give it a title or a number.");
                return;
              }
              var other = seen.putIfAbsent(Setup.canonicalKey(cell.plain()), cell);
              if (other == null) {
                setups.add(setup(cell.plain(), row));
              } else if (other.plain().equals(cell.plain())) {
                fault(
                    cell,
                    "setup " + cell.plain() + " stands in line " + other.line() + " already",
                    "Give one of the two another number, or make one line of them.");
              } else {
                fault(
                    cell,
                    "setup "
                        + cell.plain()
                        + " cannot be told from "
                        + other.plain()
                        + " in line "
                        + other.line()
                        + ": case and leading zeros do not count",
                    "Give one of the two another number.");
              }
            });
    return setups;
  }

  /** Whether a line only names the setups that follow, such as {@code Dresses}. */
  private boolean names(List<Cell> row, Cell code) {
    return taken.contains(Heading.TITLE)
        && row.stream().filter(cell -> !cell.blank()).count() == 1
        && code.plain().chars().noneMatch(Character::isDigit);
  }

  private void withoutCode(List<Cell> row, Cell cell) {
    var said = row.stream().filter(one -> !one.blank()).toList();
    int title = taken.indexOf(Heading.TITLE);
    boolean titled = title >= 0 && title < row.size() && !row.get(title).blank();
    if (said.size() == 1 && !titled) {
      remark(
          said.getFirst(),
          "\"" + said.getFirst().plain() + "\" stands alone in its line and is left out",
          "If it is a setup, give it a number.");
    } else {
      fault(
          cell,
          "this line has no setup in the column \""
              + headings.get(taken.indexOf(Heading.SETUP))
              + "\"",
          "Number it, or take the line out.");
    }
  }

  private Setup setup(String code, List<Cell> row) {
    var said = new EnumMap<Heading, String>(Heading.class);
    var columns = new LinkedHashMap<String, String>();
    var views = new LinkedHashMap<String, View>();
    var frames = OptionalInt.empty();
    for (int i = 0; i < headings.size(); i++) {
      var cell = i < row.size() ? row.get(i) : new Cell("", 0, 0);
      if (cell.text().indexOf('\uFFFD') >= 0) {
        remark(cell, "a letter of \"" + cell.plain() + "\" could not be read", "");
      }
      switch (taken.get(i)) {
        case SETUP, TOLD -> {}
        case TITLE -> said.put(Heading.TITLE, cell.plain());
        case VIEWS -> views(cell, views);
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
          if (headed(i) || !cell.blank()) {
            columns.put(headings.get(i), cell.text().strip());
          }
        }
      }
    }
    return new Setup(
        code, said.getOrDefault(Heading.TITLE, ""), List.copyOf(views.values()), frames, columns);
  }

  private OptionalInt number(Cell cell) {
    var number = NUMBER.matcher(cell.plain());
    if (cell.blank() || cell.plain().equals("-")) {
      return OptionalInt.empty();
    }
    if (number.matches()) {
      int frames = Integer.parseInt(number.group(1));
      return frames > 0 ? OptionalInt.of(frames) : OptionalInt.empty();
    }
    remark(
        cell,
        "\"" + cell.plain() + "\" is no number of frames; it is kept as text",
        "Write a number such as 12.");
    return OptionalInt.empty();
  }

  private void views(Cell cell, Map<String, View> views) {
    var text = cell.text().strip();
    if (text.isEmpty() || text.equals("-")) {
      return;
    }
    for (var part : COUNTED.matcher(text).replaceAll(":").split("[,;/+|&\\r\\n]+", -1)) {
      for (var view : apart(part.strip())) {
        add(cell, view, views);
      }
    }
  }

  /**
   * {@code F B D}, {@code F:8 B:4} and {@code F 8} are several words; {@code three quarter} is one
   * view.
   */
  private static List<View> apart(String part) {
    var words = part.split("\\s+", -1);
    boolean codes =
        Arrays.stream(words).allMatch(word -> word.length() <= 3 || VIEW.matcher(word).matches());
    if (part.isEmpty()) {
      return List.of();
    }
    if (!codes) {
      return List.of(view(part));
    }
    var views = new ArrayList<View>();
    for (var word : words) {
      boolean number = word.matches("\\d{1,4}");
      if (number
          && !views.isEmpty()
          && views.getLast().frames().isEmpty()
          && !views.getLast().code().matches("\\d+")) {
        views.add(view(views.removeLast().code() + ":" + word));
      } else {
        views.add(view(word));
      }
    }
    return views;
  }

  private static View view(String text) {
    var counted = VIEW.matcher(text);
    if (!counted.matches()) {
      return new View(text);
    }
    int frames = Integer.parseInt(counted.group(2));
    return new View(counted.group(1), frames > 0 ? OptionalInt.of(frames) : OptionalInt.empty());
  }

  private void viewInColumn(String heading, Cell cell, Map<String, View> views) {
    if (cell.blank() || cell.plain().equals("0")) {
      return;
    }
    var number = NUMBER.matcher(cell.plain());
    add(
        cell,
        number.matches()
            ? new View(heading, OptionalInt.of(Integer.parseInt(number.group(1))))
            : new View(heading),
        views);
  }

  private void add(Cell cell, View view, Map<String, View> views) {
    if (views.putIfAbsent(view.code().toLowerCase(Locale.ROOT), view) != null) {
      remark(cell, "the view " + view.code() + " is named twice", "");
    }
  }

  private void fault(Cell cell, String message, String remedy) {
    faults.add(new Fault(source, cell.line(), cell.column(), message, remedy));
  }

  private void remark(Cell cell, String message, String remedy) {
    remarks.add(new Fault(source, cell.line(), cell.column(), message, remedy));
  }
}
